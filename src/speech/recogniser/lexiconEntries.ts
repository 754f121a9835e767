/** Written by tests/tools/buildLexicon.ts; pronunciations from the CMU Pronouncing Dictionary and reviewed alternates. */
export const LEXICON_TEXT = `
a AH|EY
able EY B AH L
about AH B AW T
above AH B AH V
absolutely AE B S AH L UW T L IY
ace EY S
across AH K R AO S
add AE D
adjust AH JH AH S T
adjusted AH JH AH S T IH D
after AE F T ER
again AH G EH N|AH G EY N
against AH G EH N S T|AH G EY N S T
age EY JH
ahead AH HH EH D
air EH R
alarm AH L AA R M
alarms AH L AA R M Z
align AH L AY N
aligned AH L AY N D
all AO L
almost AO L M OW S T
alone AH L OW N
along AH L AO NG
alpha AE L F AH
already AO L R EH D IY|AO R EH D IY
alright AO L R AY T
also AO L S OW
always AO L W EY Z|AO L W IY Z
am AE M|EY EH M
amber AE M B ER
amp AE M P
amps AE M P S
an AE N|AH N
anchor AE NG K ER
and AE N D|AH N D|AH N|AE N
another AH N AH DH ER
antenna AE N T EH N AH
any EH N IY
anything EH N IY TH IH NG
apart AH P AA R T
appears AH P IH R Z
appliances AH P L AY AH N S AH Z|AH P L AY AH N S IH Z
april EY P R AH L
are AA R|ER
arm AA R M
arms AA R M Z
around ER AW N D|ER AW N
as AE Z|EH Z
asphalt AE S F AO L T
at AE T
attached AH T AE CH T
auger AO G ER
august AA G AH S T|AO G AH S T
away AH W EY
awning AA N IH NG
axle AE K S AH L
axles AE K S AH L Z
b B IY
baby B EY B IY
back B AE K
backed B AE K T
backing B AE K IH NG
backward B AE K W ER D
bad B AE D
bag B AE G
bald B AO L D
ball B AO L
balls B AO L Z
band B AE N D
bar B AA R
bare B EH R
barely B EH R L IY
bars B AA R Z
batteries B AE T ER IY Z
battery B AE T ER IY
be B IY
beacon B IY K AH N
bead B IY D
beam B IY M
bearing B EH R IH NG
bearings B EH R IH NG Z
beat B IY T
because B IH K AO Z|B IH K AH Z|B IH K AA Z
bed B EH D
bedding B EH D IH NG
been B IH N|B AH N
beeped B IY P T
beeping B IY P IH NG
beeps B IY P S
before B IH F AO R|B IY F AO R
begin B IH G IH N
behind B IH HH AY N D
being B IY IH NG
belly B EH L IY
below B IH L OW|B IY L OW
belt B EH L T
bend B EH N D
bends B EH N D Z
bent B EH N T
beside B IH S AY D|B IY S AY D
best B EH S T
better B EH T ER
between B IH T W IY N|B IY T W IY N
big B IH G
bigger B IH G ER
bike B AY K
bin B IH N
bind B AY N D
binding B AY N D IH NG
bird B ER D
bit B IH T
black B L AE K
blade B L EY D
blanket B L AE NG K AH T|B L AE NG K IH T
bled B L EH D
bleed B L IY D
blew B L UW
blink B L IH NG K
blinkers B L IH NG K ER Z
blinking B L IH NG K IH NG
blinks B L IH NG K S
block B L AA K
blocked B L AA K T
blocking B L AA K IH NG
blocks B L AA K S
blow B L OW
blowing B L OW IH NG
blown B L OW N
blows B L OW Z
blue B L UW
board B AO R D
boards B AO R D Z
body B AA D IY
bolt B OW L T
bolted B OW L T AH D|B OW L T IH D
bolts B OW L T S
bone B OW N
boot B UW T
both B OW TH
bottle B AA T AH L
bottom B AA T AH M
bounce B AW N S
bowed B AW D|B OW D
box B AA K S
boxes B AA K S AH Z|B AA K S IH Z
bracket B R AE K IH T
brackets B R AE K AH T S|B R AE K IH T S
brake B R EY K
braked B R EY K T
brakes B R EY K S
bravo B R AA V OW
breakaway B R EY K AH W EY
breaker B R EY K ER
breaks B R EY K S
breeze B R IY Z
brick B R IH K
bright B R AY T
bring B R IH NG
bringing B R IH NG IH NG
broke B R OW K
broken B R OW K AH N
brown B R AW N
brush B R AH SH
bubble B AH B AH L
bubbles B AH B AH L Z
bucket B AH K AH T|B AH K IH T
buckle B AH K AH L
build B IH L D
bulb B AH L B
bulbs B AH L B Z
bulge B AH L JH
bulges B AH L JH IH Z
bulging B AH L JH IH NG
bump B AH M P
bumper B AH M P ER
bunched B AH N CH T
bundle B AH N D AH L
bungee B AH N JH IY
bunk B AH NG K
bunks B AH NG K S
burn B ER N
burned B ER N D
burner B ER N ER
burners B ER N ER Z
burning B ER N IH NG
burns B ER N Z
burnt B ER N T
burst B ER S T
bushing B UH SH IH NG
but B AH T
button B AH T AH N
buzz B AH Z
buzzer B AH Z ER
by B AY
c S IY
cab K AE B
cabin K AE B AH N
cabinets K AE B AH N AH T S|K AE B N AH T S
cable K EY B AH L
cables K EY B AH L Z
cage K EY JH
call K AO L
calm K AA M|K AA L M
came K EY M
camper K AE M P ER
can K AE N|K AH N
can't K AE N T
cannot K AE N AA T|K AH N AA T
cap K AE P
caps K AE P S
car K AA R
carbon K AA R B AH N
card K AA R D
carefully K EH R F AH L IY
carriage K AE R IH JH|K EH R AH JH
carry K AE R IY|K EH R IY
case K EY S
casing K EY S IH NG
cast K AE S T
caught K AA T|K AO T
caulk K AA K|K AO K
caution K AA SH AH N|K AO SH AH N
celsius S EH L S IY AH S
center S EH N T ER|S EH N ER
centimeter S EH N T AH M IY T ER
centimeters S EH N T AH M IY T ER Z
certain S ER T AH N
chafed CH EY F T
chain CH EY N
chained CH EY N D
chains CH EY N Z
change CH EY N JH
changed CH EY N JH D
charge CH AA R JH
charged CH AA R JH D
charger CH AA R JH ER
charging CH AA R JH IH NG
charlie CH AA R L IY
check CH EH K
checked CH EH K T
chewed CH UW D
child CH AY L D
chip CH IH P
chipped CH IH P T
chirp CH ER P
chirping CH ER P IH NG
chirps CH ER P S
chock CH AA K
chocked CH AA K T
chocks CH AA K S
choose CH UW Z
chunk CH AH NG K
chunks CH AH NG K S
circle S ER K AH L
clamp K L AE M P
clamped K L AE M P T
clamps K L AE M P S
clean K L IY N
cleaned K L IY N D
clear K L IH R
clearance K L IH R AH N S
cleared K L IH R D
clearly K L IH R L IY
clevis K L EH V IH S
click K L IH K
clicked K L IH K T
clicks K L IH K S
clip K L IH P
clipped K L IH P T
clips K L IH P S
close K L OW S|K L OW Z
closed K L OW Z D
closes K L OW Z IH Z
closet K L AA Z AH T
cloth K L AO TH
clubs K L AH B Z
clunk K L AH NG K
coat K OW T
code K OW D
coil K OY L
cold K OW L D
collapsed K AH L AE P S T
collar K AA L ER
color K AH L ER|K AO L ER
come K AH M
comes K AH M Z
coming K AH M IH NG
complete K AH M P L IY T
completely K AH M P L IY T L IY
condition K AH N D IH SH AH N
conditioner K AH N D IH SH AH N ER
connected K AH N EH K T IH D
connection K AH N EH K SH AH N
connector K AH N EH K T ER
continue K AH N T IH N Y UW
control K AH N T R OW L
controller K AH N T R OW L ER
cooktop K UH K T AA P
cool K UW L
cooling K UW L IH NG
copper K AA P ER
cord K AO R D
cords K AO R D Z
core K AO R
corner K AO R N ER
correct K ER EH K T
correction K ER EH K SH AH N
corroded K ER OW D IH D
corrosion K ER OW ZH AH N
cotter K AA T ER
could K UH D
couldn't K UH D AH N T|K UH D AH N
count K AW N T
counter K AW N T ER
couple K AH P AH L
coupled K AH P AH L D
coupler K AH P L ER|K AH P AH L ER
couplers K AH P L ER Z
course K AO R S
cover K AH V ER
covered K AH V ER D
covers K AH V ER Z
crack K R AE K
cracked K R AE K T
cracking K R AE K IH NG
cracks K R AE K S
crank K R AE NG K
cranked K R AE NG K T
creak K R IY K
crease K R IY S
creek K R IY K|K R IH K
crimp K R IH M P
crimped K R IH M P T
crooked K R UH K AH D
cross K R AO S
crossed K R AO S T
crumbling K R AH M B AH L IH NG|K R AH M B L IH NG
crushed K R AH SH T
crust K R AH S T
crusted K R AH S T IH D
cup K AH P
cupboard K AH B ER D
cupboards K AH B ER D Z
curb K ER B
curl K ER L
curled K ER L D
current K ER AH N T|K ER N T|K AA R AH N T
cut K AH T
cuts K AH T S
cutting K AH T IH NG
cylinder S IH L AH N D ER|S IH L IH N D ER
cylinders S IH L AH N D ER Z
d D IY
damage D AE M AH JH|D AE M IH JH
damaged D AE M AH JH D|D AE M IH JH D
damp D AE M P
dangling D AE NG G AH L IH NG|D AE NG G L IH NG
dark D AA R K
dash D AE SH
date D EY T
dated D EY T IH D
day D EY
days D EY Z
dead D EH D
deadbolt D EH D B OW L T
deadbolts D EH D B OW L T S
december D IH S EH M B ER
deep D IY P
deflated D IH F L EY T IH D
degree D IH G R IY
degrees D IH G R IY Z
delta D EH L T AH
dent D EH N T
dented D EH N T IH D
depth D EH P TH
detector D IH T EH K T ER
diamonds D AY M AH N D Z
did D IH D
didn't D IH D AH N T|D IH D N T|D IH D AH N|D IH N T
died D AY D
different D IH F ER AH N T|D IH F R AH N T
difficult D IH F AH K AH L T
digit D IH JH AH T|D IH JH IH T
dim D IH M
dimly D IH M L IY
dinged D IH NG D
dings D IH NG Z
dips D IH P S
dirt D ER T
dirty D ER T IY
disc D IH S K
disconnected D IH S K AH N EH K T IH D
display D IH S P L EY
distance D IH S T AH N S
dizzy D IH Z IY
do D UW
does D AH Z|D IH Z
doesn't D AH Z AH N T|D AH Z AH N
dog D AO G
doing D UW IH NG
dollar D AA L ER|D AO L ER
don't D OW N T|D OW N
done D AH N
door D AO R
doors D AO R Z
dot D AA T
double D AH B AH L
doubled D AH B AH L D
down D AW N
drag D R AE G
dragging D R AE G IH NG
drain D R EY N
drained D R EY N D
draw D R AO
drawer D R AO R
drift D R IH F T
drifting D R IH F T IH NG
drip D R IH P
dripping D R IH P IH NG
drips D R IH P S
drive D R AY V
driver D R AY V ER
driver's D R AY V ER Z
driving D R AY V IH NG
droops D R UW P S
drop D R AA P|D R AO P
dropped D R AA P T
drops D R AA P S
drum D R AH M
dry D R AY
due D UW|D Y UW
dull D AH L
dust D AH S T
e IY
each IY CH
early ER L IY
ease IY Z
eased IY Z D
easy IY Z IY
echo EH K OW
edge EH JH
edges EH JH AH Z|EH JH IH Z
egg EH G
eight EY T
eighteen EY T IY N
eighteenth EY T IY N TH
eighth EY T TH|EY TH
eighths EY T TH S
eighty EY T IY|EY D IY
either IY DH ER|AY DH ER
electric IH L EH K T R IH K
eleven IH L EH V AH N|AH L EH V AH N|L EH V AH N
else EH L S
empty EH M P T IY|EH M T IY
end EH N D
ends EH N D Z
engine EH N JH AH N|IH N JH AH N
enough IH N AH F|IY N AH F
error EH R ER
even IY V IH N
evenly IY V AH N L IY
ever EH V ER
every EH V ER IY|EH V R IY
everybody EH V R IY B AA D IY
everyone EH V R IY W AH N
everything EH V R IY TH IH NG
exactly IH G Z AE K T L IY
except IH K S EH P T
exhaust IH G Z AO S T
expired IH K S P AY R D
extinguisher IH K S T IH NG G W IH SH ER
extra EH K S T R AH
eye AY
eyelet AY L AH T
f EH F
face F EY S
faded F EY D AH D|F EY D IH D
fahrenheit F EH R AH N HH AY T
failed F EY L D
fails F EY L Z
fair F EH R
fan F AE N
far F AA R
fast F AE S T
fastened F AE S AH N D
fault F AO L T
faulty F AO L T IY
feature F IY CH ER
february F EH B Y AH W EH R IY|F EH B R UW EH R IY
feel F IY L
feels F IY L Z
feet F IY T
fell F EH L
fence F EH N S
fender F EH N D ER
few F Y UW
fifteen F IH F T IY N
fifty F IH F T IY
fill F IH L
filled F IH L D
filter F IH L T ER
find F AY N D
fine F AY N|F IH N AH
finger F IH NG G ER
finished F IH N IH SH T
fire F AY ER|F AY R
fired F AY ER D
firm F ER M
firmly F ER M L IY
first F ER S T
fish F IH SH
fit F IH T
fits F IH T S
fitting F IH T IH NG
fittings F IH T IH NG Z
five F AY V
fix F IH K S
fixed F IH K S T
fixing F IH K S IH NG
flag F L AE G
flaking F L EY K IH NG
flame F L EY M
flange F L AE N JH
flap F L AE P
flapping F L AE P IH NG
flare F L EH R
flares F L EH R Z
flash F L AE SH
flasher F L AE SH ER
flashers F L AE SH ER Z
flashes F L AE SH IH Z
flashing F L AE SH IH NG
flat F L AE T
flattened F L AE T AH N D
flicker F L IH K ER
flickering F L IH K ER IH NG
flickers F L IH K ER Z
floor F L AO R
flow F L OW
fluid F L UW AH D|F L UW IH D
flush F L AH SH
foam F OW M
fog F AA G|F AO G
fold F OW L D
folded F OW L D AH D|F OW L D IH D
folding F OW L D IH NG
foot F UH T
for F AO R|F ER|F R ER
forecast F AO R K AE S T
forever F ER EH V ER
forgot F ER G AA T|F AO R G AA T
forty F AO R T IY|F AO R D IY
forward F AO R W ER D
found F AW N D
four F AO R
fourteen F AO R T IY N
foxtrot F AA K S T R AA T
frame F R EY M
frames F R EY M Z
frayed F R EY D
fraying F R EY IH NG
free F R IY
freed F R IY D
freely F R IY L IY
freeze F R IY Z
freezing F R IY Z IH NG
fresh F R EH SH
friday F R AY D IY|F R AY D EY
front F R AH N T
frost F R AO S T
frosted F R AO S T AH D|F R AO S T IH D
frosty F R AO S T IY
froze F R OW Z
frozen F R OW Z AH N
fuel F Y UW AH L|F Y UW L
full F UH L
fully F UH L IY
fumes F Y UW M Z
function F AH NG K SH AH N
functional F AH NG K SH AH N AH L
furnace F ER N AH S
fuse F Y UW Z
fuses F Y UW Z AH Z|F Y UW Z IH Z
g JH IY
gale G EY L
gallon G AE L AH N
gallons G AE L AH N Z
gap G AE P
garbage G AA R B IH JH
gas G AE S
gasket G AE S K AH T
gauge G EY JH
gear G IH R
gears G IH R Z
generator JH EH N ER EY T ER
get G EH T|G IH T
gets G EH T S|G IH T S
getting G EH T IH NG|G IH T IH NG
give G IH V
glass G L AE S
glove G L AH V
gloves G L AH V Z
glow G L OW
glowing G L OW IH NG
go G OW
goes G OW Z
going G OW IH NG|G OW IH N
gone G AO N
good G UH D|G IH D
goose G UW S
got G AA T
gouge G AW JH
gouged G AW JH D
grab G R AE B
grabs G R AE B Z
gram G R AE M
grams G R AE M Z
gravel G R AE V AH L
gray G R EY
grease G R IY S
greased G R IY S T
greasy G R IY S IY
great G R EY T
green G R IY N
grind G R AY N D
grinding G R AY N D IH NG
grinds G R AY N D Z
grip G R IH P
groove G R UW V
grooved G R UW V D
ground G R AW N D
grounded G R AW N D IH D
guard G AA R D
guess G EH S
guitar G IH T AA R
gummed G AH M D
guys G AY Z
h EY CH
had HH AE D
hairline HH EH R L AY N
half HH AE F
hammer HH AE M ER
hand HH AE N D
handle HH AE N D AH L
hands HH AE N D Z|HH AE N Z
hang HH AE NG
hanging HH AE NG IH NG|HH AE NG G IH NG
hangs HH AE NG Z
happen HH AE P AH N
happens HH AE P AH N Z
hard HH AA R D
hardly HH AA R D L IY
hardware HH AA R D W EH R
has HH AE Z|HH AH Z
hasn't HH AE Z AH N T
hasp HH AE S P
hatch HH AE CH
have HH AE V
haven't HH AE V AH N T|HH AE V AH N
hazard HH AE Z ER D
hazards HH AE Z ER D Z
he HH IY
head HH EH D
headache HH EH D EY K
header HH EH D ER
headlight HH EH D L AY T
headlights HH EH D L AY T S
hear HH IY R
heard HH ER D
hearts HH AA R T S
heat HH IY T
heated HH IY T AH D|HH IY T IH D
heater HH IY T ER
heating HH IY T IH NG
heavily HH EH V AH L IY
heavy HH EH V IY
height HH AY T
held HH EH L D
hello HH AH L OW|HH EH L OW
help HH EH L P
her HH ER
here HH IY R
high HH AY
higher HH AY ER
hinge HH IH N JH
hinges HH IH N JH IH Z
hiss HH IH S
hisses HH IH S IH Z
hissing HH IH S IH NG
hit HH IH T
hitch HH IH CH
hitched HH IH CH T
hold HH OW L D
holder HH OW L D ER
holding HH OW L D IH NG
holds HH OW L D Z
hole HH OW L
holes HH OW L Z
home HH OW M
honest AA N AH S T
hook HH UH K
hooked HH UH K T
hooks HH UH K S
horizontal HH AO R AH Z AA N T AH L
horn HH AO R N
hose HH OW Z
hoses HH OW Z IH Z
hot HH AA T
hotter HH AA T ER
hour AW ER|AW R
hours AW ER Z|AW R Z
house HH AW S
how HH AW
hub HH AH B
hubcap HH AH B K AE P
hubs HH AH B Z
hum HH AH M
humming HH AH M IH NG
hundred HH AH N D R AH D|HH AH N D R IH D|HH AH N D ER D|HH AH N ER D
hundredth HH AH N D R AH D TH
hundredths HH AH N D R AH D TH S
hung HH AH NG
hydraulic HH AY D R AO L IH K
hydraulics HH AY D R AO L IH K S
i AY
i'd AY D
i'll AY L
i'm AY M|AA M
i've AY V
ice AY S
iced AY S T
icy AY S IY
idea AY D IY AH
if IH F
ignite IH G N AY T
igniter IH G N AY T ER
ignition IH G N IH SH AH N
in IH N
inch IH N CH
inches IH N CH AH Z|IH N CH IH Z
indicator IH N D AH K EY T ER
inflated IH N F L EY T IH D
inner IH N ER
inside IH N S AY D
inspect IH N S P EH K T
inspected IH N S P EH K T IH D
installed IH N S T AO L D
intact IH N T AE K T
is IH Z
isn't IH Z AH N T|IH Z AH N
it IH T
it'll IH T AH L|IH T L
it's IH T S
its IH T S
j JH EY
jack JH AE K
jacks JH AE K S
jam JH AE M
jammed JH AE M D
jams JH AE M Z
january JH AE N Y UW EH R IY
jaw JH AO
jaws JH AO Z
jerk JH ER K
jerky JH ER K IY
jiggle JH IH G AH L
joint JH OY N T
joints JH OY N T S
july JH UW L AY|JH AH L AY
jumped JH AH M P T
june JH UW N
just JH AH S T|JH IH S T
k K EY
keep K IY P
keeper K IY P ER
keepers K IY P ER Z
keeps K IY P S
key K IY
keyed K IY D
kid K IH D
kill K IH L
kilo K IH L OW
kilogram K IH L AH G R AE M
kilograms K IH L AH G R AE M Z
kilometer K AH L AA M AH T ER|K IH L AH M IY T ER
kilometers K AH L AA M AH T ER Z|K IH L AH M IY T ER Z
kilopascal K IH L OW P AE S K AE L|K IH L AH P AE S K AH L
kilopascals K IH L OW P AE S K AE L Z|K IH L AH P AE S K AH L Z
kind K AY N D
king K IH NG
kink K IH NG K
kinked K IH NG K T
kinks K IH NG K S
kit K IH T
knob N AA B
knobs N AA B Z
knock N AA K
knocked N AA K T
know N OW
knuckle N AH K AH L
l EH L
label L EY B AH L
ladder L AE D ER
lady L EY D IY
lake L EY K
lamp L AE M P
lamps L AE M P S
lanyard L AE N Y ER D
large L AA R JH
last L AE S T|L AE S
latch L AE CH
latched L AE CH T
latches L AE CH AH Z|L AE CH IH Z
late L EY T
later L EY T ER
lay L EY
leaf L IY F
leak L IY K
leaked L IY K T
leaking L IY K IH NG
leaks L IY K S
lean L IY N
leaning L IY N IH NG
leans L IY N Z
least L IY S T
leave L IY V
left L EH F T
leg L EH G
legs L EH G Z
lens L EH N Z
lenses L EH N Z AH Z|L EH N Z IH Z
less L EH S
let L EH T
letting L EH T IH NG
level L EH V AH L
levels L EH V AH L Z
lever L EH V ER|L IY V ER
license L AY S AH N S
lid L IH D
lift L IH F T
lifted L IH F T AH D|L IH F T IH D
lifts L IH F T S
light L AY T
lighter L AY T ER
lighting L AY T IH NG
lights L AY T S
like L AY K
limit L IH M AH T
limp L IH M P
line L AY N
lined L AY N D
lines L AY N Z
link L IH NG K
links L IH NG K S
listening L IH S AH N IH NG|L IH S N IH NG
lit L IH T
liter L IY T ER
liters L IY T ER Z
little L IH T AH L
load L OW D
loaded L OW D IH D
lock L AA K
locked L AA K T
locking L AA K IH NG
locks L AA K S
log L AO G
long L AO NG
longer L AO NG G ER
look L UH K
looked L UH K T
looking L UH K IH NG
looks L UH K S
loop L UW P
looped L UW P T
loose L UW S
loosely L UW S L IY
loosened L UW S AH N D
lost L AO S T
lot L AA T|L AO T
loud L AW D
louder L AW D ER
lousy L AW Z IY
low L OW
lower L OW ER
lowered L OW ER D
lube L UW B
lug L AH G
lugs L AH G Z
lukewarm L UW K W AO R M
lumps L AH M P S
m EH M
made M EY D
magnet M AE G N AH T
main M EY N
make M EY K
makes M EY K S
man M AE N
many M EH N IY
march M AA R CH
mark M AA R K
marked M AA R K T
marker M AA R K ER
markers M AA R K ER Z
mask M AE S K
mat M AE T
match M AE CH
matches M AE CH AH Z|M AE CH IH Z
matter M AE T ER
may M EY
maybe M EY B IY
me M IY
mean M IY N
measure M EH ZH ER
measured M EH ZH ER D
melt M EH L T
melted M EH L T AH D|M EH L T IH D
melting M EH L T IH NG
messed M EH S T
metal M EH T AH L
meter M IY T ER
meters M IY T ER Z
mice M AY S
middle M IH D AH L
midway M IH D W EY
might M AY T
mile M AY L
miles M AY L Z|M AY AH L Z
milky M IH L K IY
millimeter M IH L AH M IY T ER
millimeters M IH L AH M IY T ER Z
million M IH L Y AH N
mind M AY N D
minor M AY N ER
minus M AY N AH S
minute M IH N AH T|M AY N UW T|M AY N Y UW T
minutes M IH N AH T S
mirror M IH R ER
mirrors M IH R ER Z
misaligned M IH S AH L AY N D
miss M IH S
missing M IH S IH NG
mode M OW D
moisture M OY S CH ER
moment M OW M AH N T
monday M AH N D IY|M AH N D EY
monoxide M AH N AA K S AY D
month M AH N TH
months M AH N TH S
more M AO R
morning M AO R N IH NG
most M OW S T|M OW S
mount M AW N T
mounted M AW N T AH D|M AW N T IH D|M AW N IH D
mounting M AW N T IH NG
mounts M AW N T S
mouse M AW S
mouth M AW TH
move M UW V
moved M UW V D
movement M UW V M AH N T
moves M UW V Z
moving M UW V IH NG
much M AH CH
mud M AH D
muddy M AH D IY
must M AH S T
my M AY
n EH N
nail N EY L
nailed N EY L D
near N IH R
nearly N IH R L IY
neat N IY T
neck N EH K
need N IY D
needed N IY D AH D|N IY D IH D
needle N IY D AH L
needs N IY D Z
negative N EH G AH T IH V
neither N IY DH ER|N AY DH ER
never N EH V ER
new N UW|N Y UW
newton N UW T AH N
newtons N UW T AH N Z
next N EH K S T|N EH K S
nice N AY S|N IY S
nick N IH K
nicked N IH K T
night N AY T
nine N AY N
nineteen N AY N T IY N
ninety N AY N T IY|N AY N D IY
no N OW
nobody N OW B AA D IY|N OW B AH D IY
noise N OY Z
noisy N OY Z IY
none N AH N
nope N OW P
normal N AO R M AH L
north N AO R TH
nose N OW Z
not N AA T
note N OW T
nothing N AH TH IH NG
notice N OW T AH S|N OW T IH S
november N OW V EH M B ER
now N AW
numb N AH M
number N AH M B ER
nut N AH T
nuts N AH T S
o OW
o'clock AH K L AA K
object AA B JH EH K T|AH B JH EH K T
obvious AA B V IY AH S
october AA K T OW B ER
of AH V
off AO F
offline AO F L AY N
oh OW
oil OY L
oiled OY L D
oily OY L IY
okay OW K EY
old OW L D
on AA N|AO N
once W AH N S
one W AH N
ones W AH N Z
only OW N L IY
open OW P AH N
opened OW P AH N D
opening OW P AH N IH NG
opens OW P AH N Z
or AO R|ER
orange AO R AH N JH|AO R IH N JH
order AO R D ER
other AH DH ER
others AH DH ER Z
ounce AW N S
ounces AW N S AH Z|AW N S IH Z
our AW ER|AA R
out AW T
outer AW T ER
outlet AW T L EH T
outside AW T S AY D
oven AH V AH N
over OW V ER
overheated OW V ER HH IY T IH D
overnight OW V ER N AY T
oxidized AA K S AH D AY Z D
p P IY
packed P AE K T
pad P AE D
padlock P AE D L AA K
padlocks P AE D L AA K S
pads P AE D Z
pail P EY L
paint P EY N T
pan P AE N
panel P AE N AH L
park P AA R K
parked P AA R K T
parking P AA R K IH NG
part P AA R T
parted P AA R T IH D
partly P AA R T L IY
parts P AA R T S
pascal P AE S K AE L
pascals P AE S K AE L Z
pass P AE S
passed P AE S T
passenger P AE S AH N JH ER
past P AE S T
patch P AE CH
patched P AE CH T
pause P AO Z
pawl P AO L
peeling P IY L IH NG
peels P IY L Z
pen P EH N
per P ER
percent P ER S EH N T
perfect P ER F EH K T|P ER F IH K T
perfectly P ER F AH K T L IY|P ER F AH K L IY
person P ER S AH N
photo F OW T OW
pick P IH K
picked P IH K T
picture P IH K CH ER
piece P IY S
pieces P IY S AH Z|P IY S IH Z
pig P IH G
pilot P AY L AH T
pin P IH N
pinch P IH N CH
pinched P IH N CH T
pinhole P IH N HH OW L
pinned P IH N D
pins P IH N Z
pipe P AY P
pit P IH T
pitted P IH T IH D
pitting P IH T IH NG
pivot P IH V AH T
placard P L AE K ER D
place P L EY S
placed P L EY S T
plan P L AE N
plastic P L AE S T IH K
plate P L EY T
plates P L EY T S
play P L EY
plenty P L EH N T IY|P L EH N IY
plow P L AW
plug P L AH G
plugged P L AH G D
plugs P L AH G Z
plumb P L AH M
plus P L AH S
pocket P AA K AH T
point P OY N T
pole P OW L
poor P UW R
pop P AA P
popped P AA P T
popping P AA P IH NG
pops P AA P S
port P AO R T
position P AH Z IH SH AH N
positive P AA Z AH T IH V
post P OW S T
posts P OW S T S
pound P AW N D
pounds P AW N D Z|P AW N Z
power P AW ER
powered P AW ER D
pressed P R EH S T
pressure P R EH SH ER
pretty P R IH T IY
probably P R AA B AH B L IY|P R AA B L IY
problem P R AA B L AH M
propane P R OW P EY N
properly P R AA P ER L IY
props P R AA P S
pry P R AY
psi P IY EH S AY
pull P UH L
pulled P UH L D
pulley P UH L IY
pulleys P UH L IY Z
pulling P UH L IH NG
pulls P UH L Z
pulse P AH L S
pump P AH M P
pumped P AH M P T
punctured P AH NG K CH ER D|P AH NG K SH ER D
push P UH SH
pushed P UH SH T
put P UH T
q K Y UW
quarter K W AO R T ER|K AO R T ER
quarters K W AO R T ER Z|K AO R T ER Z
queen K W IY N
questions K W EH S CH AH N Z
quick K W IH K
quiet K W AY AH T
quieter K W AY AH T ER
quit K W IH T
quite K W AY T
r AA R
rack R AE K
rag R AE G
rail R EY L
rain R EY N
raise R EY Z
raised R EY Z D
ramp R AE M P
ran R AE N
rattle R AE T AH L
rattles R AE T AH L Z
rattling R AE T L IH NG|R AE T AH L IH NG
reach R IY CH
read R EH D|R IY D
readable R IY D AH B AH L
reading R IY D IH NG|R EH D IH NG
reads R IY D Z
ready R EH D IY
real R IY L
really R IH L IY|R IY L IY
rear R IH R
rebuild R IY B IH L D
recheck R IY CH EH K
red R EH D
reflector R IH F L EH K T ER
reflectors R IH F L EH K T ER Z
refrigerator R AH F R IH JH ER EY T ER|R IH F R IH JH ER EY T ER
regulator R EH G Y AH L EY T ER
release R IY L IY S
released R IY L IY S T
relief R IH L IY F|R IY L IY F
remote R IH M OW T|R IY M OW T
remove R IY M UW V
removed R IY M UW V D
repair R IH P EH R
repaired R IH P EH R D|R IY P EH R D
repeat R IH P IY T|R IY P IY T
replace R IY P L EY S|ER P L EY S
replaced R IY P L EY S T
rest R EH S T
resume R IH Z UW M|R IY Z UW M|R EH Z AH M EY
reversed R IH V ER S T|R IY V ER S T
ribbon R IH B AH N
right R AY T
rim R IH M
rims R IH M Z
ring R IH NG
rip R IH P
ripped R IH P T
rips R IH P S
rise R AY Z
rises R AY Z AH Z|R AY Z IH Z
rising R AY Z IH NG
rivet R IH V AH T
rivets R IH V AH T S
road R OW D
rock R AA K
rocks R AA K S
rod R AA D
rods R AA D Z
roll R OW L
rolled R OW L D
rolling R OW L IH NG
rolls R OW L Z
roof R UW F|R UH F
room R UW M
rope R OW P
ropes R OW P S
rot R AA T
rotate R OW T EY T
rotor R OW T ER
rotted R AA T IH D
rotten R AA T AH N
rough R AH F
round R AW N D
route R UW T|R AW T
rub R AH B
rubbed R AH B D
rubber R AH B ER
rubbing R AH B IH NG
rubs R AH B Z
ruined R UW AH N D|R UW IH N D
run R AH N
running R AH N IH NG
runs R AH N Z
rust R AH S T
rusted R AH S T IH D
rusty R AH S T IY
s EH S
safe S EY F
safety S EY F T IY
sagging S AE G IH NG
sags S AE G Z
said S EH D
salt S AO L T
same S EY M
sand S AE N D
sat S AE T
saturday S AE T ER D IY|S AE T IH D EY
saw S AO
say S EY
says S EH Z|S IH Z
scale S K EY L
scorched S K AO R CH T
score S K AO R
scored S K AO R D
scrape S K R EY P
scraped S K R EY P T
scraping S K R EY P IH NG
scratch S K R AE CH
scratched S K R AE CH T
screen S K R IY N
screw S K R UW
screwed S K R UW D
screws S K R UW Z
seal S IY L
sealed S IY L D
sealing S IY L IH NG
seals S IY L Z
season S IY Z AH N
seat S IY T
seated S IY T IH D
second S EH K AH N D
seconds S EH K AH N D Z
secure S IH K Y UH R
secured S IH K Y UH R D
securely S IH K Y UH R L IY
see S IY
seen S IY N
seep S IY P
seeping S IY P IH NG
seeps S IY P S
sees S IY Z
seized S IY Z D
sensor S EH N S ER
september S EH P T EH M B ER
serviced S ER V IH S T
set S EH T
settle S EH T AH L
seven S EH V AH N
seventeen S EH V AH N T IY N
seventh S EH V AH N TH
seventy S EH V AH N T IY|S EH V AH N D IY
shackle SH AE K AH L
shackles SH AE K AH L Z
shaft SH AE F T
shakes SH EY K S
shaking SH EY K IH NG
shaky SH EY K IY
shape SH EY P
sharp SH AA R P
shattered SH AE T ER D
she SH IY
shear SH IH R
sheared SH IH R D
sheave SH IY V
shed SH EH D
sheet SH IY T
shell SH EH L
shift SH IH F T
shifted SH IH F T IH D
shim SH IH M
shine SH AY N
shining SH AY N IH NG
shiny SH AY N IY
ship SH IH P
shocks SH AA K S
shoe SH UW
shop SH AA P
short SH AO R T
shot SH AA T
should SH UH D
shoulder SH OW L D ER
show SH OW
showing SH OW IH NG
shows SH OW Z
shut SH AH T
shuts SH AH T S
side S AY D
sides S AY D Z
sidewall S AY D W AO L
sidewalls S AY D W AO L Z
sight S AY T
sign S AY N
signals S IH G N AH L Z
silent S AY L AH N T
since S IH N S
sink S IH NG K
sinks S IH NG K S
sit S IH T
sits S IH T S
sitting S IH T IH NG
six S IH K S
sixteen S IH K S T IY N
sixteenth S IH K S T IY N TH
sixteenths S IH K S T IY N TH S
sixty S IH K S T IY
size S AY Z
sizes S AY Z AH Z|S AY Z IH Z
skids S K IH D Z
skip S K IH P
skipped S K IH P T
skirt S K ER T
slabs S L AE B Z
slack S L AE K
slant S L AE N T
sleeve S L IY V
slid S L IH D
slide S L AY D
slides S L AY D Z
sliding S L AY D IH NG
slight S L AY T
slightly S L AY T L IY
slip S L IH P
slipped S L IH P T
slipping S L IH P IH NG
slips S L IH P S
slow S L OW
slowly S L OW L IY
slush S L AH SH
small S M AO L
smaller S M AO L ER
smell S M EH L
smelled S M EH L D
smells S M EH L Z
smoke S M OW K
smokes S M OW K S
smoking S M OW K IH NG
smooth S M UW DH
snag S N AE G
snagged S N AE G D
snap S N AE P
snapped S N AE P T
snaps S N AE P S
snow S N OW
snug S N AH G
snugged S N AH G D
so S OW
soaked S OW K T
socket S AA K AH T
soft S AA F T|S AO F T
solid S AA L AH D
some S AH M
somebody S AH M B AA D IY|S AH M B AH D IY
something S AH M TH IH NG
somewhat S AH M W AH T|S AH M HH W AH T
soot S UH T
sooty S UW T IY
sorry S AA R IY
sound S AW N D
sounded S AW N D IH D
sounding S AW N D IH NG
sounds S AW N D Z|S AW N Z
spades S P EY D Z
spare S P EH R
spark S P AA R K
sparks S P AA R K S
speak S P IY K
speed S P IY D
spill S P IH L
spin S P IH N
spinning S P IH N IH NG
spins S P IH N Z
splash S P L AE SH
splice S P L AY S
spliced S P L AY S T
split S P L IH T
splits S P L IH T S
spongy S P AH N JH IY
spot S P AA T
spots S P AA T S
spotty S P AA T IY
spray S P R EY
spread S P R EH D
spring S P R IH NG|S P ER IH NG
springs S P R IH NG Z|S P ER IH NG Z
square S K W EH R
squeak S K W IY K
squeaks S K W IY K S
squeal S K W IY L
squeals S K W IY L Z
stabilizer S T EY B AH L AY Z ER
stabilizers S T EY B AH L AY Z ER Z
stable S T EY B AH L
stack S T AE K
stain S T EY N
stained S T EY N D
stair S T EH R
stamp S T AE M P
stand S T AE N D
standing S T AE N D IH NG
start S T AA R T
started S T AA R T IH D
starting S T AA R T IH NG
starts S T AA R T S
stay S T EY
stayed S T EY D
stays S T EY Z
steady S T EH D IY
steel S T IY L
stem S T EH M
stems S T EH M Z
step S T EH P
steps S T EH P S
stick S T IH K
sticking S T IH K IH NG
sticks S T IH K S
sticky S T IH K IY
stiff S T IH F
still S T IH L
stir S T ER
stock S T AA K
stone S T OW N
stop S T AA P
stopped S T AA P T
stops S T AA P S
storage S T AO R AH JH|S T AO R IH JH
store S T AO R
storm S T AO R M
stove S T OW V
stow S T OW
stowed S T OW D
straight S T R EY T
strand S T R AE N D
strands S T R AE N D Z
strap S T R AE P
strapped S T R AE P T
straps S T R AE P S
streaks S T R IY K S
stretched S T R EH CH T
string S T R IH NG
strip S T R IH P
stripped S T R IH P T
strong S T R AO NG
stub S T AH B
stuck S T AH K
stud S T AH D
studs S T AH D Z
stuff S T AH F
stump S T AH M P
such S AH CH
suction S AH K SH AH N
sunday S AH N D EY|S AH N D IY
sunk S AH NG K
sunken S AH NG K AH N
supports S AH P AO R T S
sure SH UH R
surface S ER F AH S
surge S ER JH
suspension S AH S P EH N SH AH N
swap S W AA P
sway S W EY
swept S W EH P T
swing S W IH NG
swinging S W IH NG IH NG
swings S W IH NG Z
switch S W IH CH
switched S W IH CH T
swivel S W IH V AH L
swollen S W OW L AH N
swung S W AH NG
t T IY
tab T AE B
table T EY B AH L
tail T EY L
taillight T EY L L AY T
take T EY K
taken T EY K AH N
takes T EY K S
tall T AO L
tandem T AE N D AH M
tang T AE NG|T AA NG
tank T AE NG K
tanks T AE NG K S
tape T EY P
taped T EY P T
tapped T AE P T
tapping T AE P IH NG
taut T AO T
tear T EH R|T IH R
tears T EH R Z|T IH R Z
teeth T IY TH
television T EH L AH V IH ZH AH N
tell T EH L
temperature T EH M P R AH CH ER|T EH M P ER AH CH ER
ten T EH N
tension T EH N SH AH N
tenth T EH N TH
tenths T EH N TH S
test T EH S T
tested T EH S T IH D
testing T EH S T IH NG
than DH AE N|DH AH N
that DH AE T|DH AH T
that's DH AE T S
thawed TH AO D
the DH AH|DH IY
them DH EH M|DH AH M
then DH EH N
there DH EH R
there's DH EH R Z
thermostat TH ER M AH S T AE T
these DH IY Z
they DH EY
they're DH EH R|DH ER
thick TH IH K
thickness TH IH K N AH S
thin TH IH N
thing TH IH NG
things TH IH NG Z
think TH IH NG K
thinner TH IH N ER
third TH ER D
thirteen TH ER T IY N
thirty TH ER T IY|TH ER D IY
this DH IH S
those DH OW Z
though DH OW
thousand TH AW Z AH N D|TH AW Z AH N
thread TH R EH D
threads TH R EH D Z
three TH R IY
through TH R UW
throw TH R OW
thrown TH R OW N
thumb TH AH M
thump TH AH M P
thursday TH ER Z D EY|TH ER Z D IY
ticking T IH K IH NG
tie T AY
tied T AY D
tight T AY T
tighten T AY T AH N
tightened T AY T AH N D
tighter T AY T ER
tilt T IH L T
tilted T IH L T IH D
time T AY M
tin T IH N
tip T IH P
tipped T IH P T
tire T AY ER
tires T AY ER Z
to T UW|T IH|T AH
today T AH D EY|T UW D EY
toe T OW
together T AH G EH DH ER
ton T AH N
tongue T AH NG
tonight T AH N AY T|T UH N AY T
tonight's T AH N AY T S|T UH N AY T S
too T UW
took T UH K
tool T UW L
tools T UW L Z
top T AA P|T AO P
torch T AO R CH
tore T AO R
torn T AO R N
torque T AO R K
torqued T AO R K T
torsion T AO R SH AH N
touch T AH CH
touched T AH CH T
touching T AH CH IH NG
tough T AH F
tow T OW
tower T AW ER
towing T OW IH NG
track T R AE K
trailer T R EY L ER
trailers T R EY L ER Z
trails T R EY L Z
transport T R AE N S P AO R T
trap T R AE P
trash T R AE SH
travel T R AE V AH L
tread T R EH D
treads T R EH D Z
tree T R IY
triangles T R AY AE NG G AH L Z
trickle T R IH K AH L
tried T R AY D
trip T R IH P
trips T R IH P S
truck T R AH K
true T R UW
try T R AY
tube T UW B|T Y UW B
tuesday T UW Z D IY|T UW Z D EY|T Y UW Z D EY
tug T AH G
turn T ER N
turned T ER N D
turning T ER N IH NG
turns T ER N Z
tweak T W IY K
twelve T W EH L V
twenty T W EH N T IY|T W EH N IY|T W AH N IY
twice T W AY S
twist T W IH S T
twisted T W IH S T IH D
two T UW
type T AY P
u Y UW
uh AH
um AH M
unbolted AH N B OW L T IH D
uncovered AH N K AH V ER D
under AH N D ER
underneath AH N D ER N IY TH
undo AH N D UW
undone AH N D AH N
uneven AH N IY V AH N
unhooked AH N HH UH K T
unit Y UW N AH T|Y UW N IH T
unlatched AH N L AE CH T
unlit AH N L IH T
unlocked AH N L AA K T
unplugged AH N P L AH G D
unraveling AH N R AE V AH L IH NG|AH N R AE V L IH NG
unscrewed AH N S K R UW D
unstable AH N S T EY B AH L
until AH N T IH L
unusual AH N Y UW ZH UW AH L|AH N Y UW ZH W AH L
up AH P
upper AH P ER
upright AH P R AY T
upside AH P S AY D
us AH S|Y UW EH S
use Y UW S|Y UW Z
used Y UW Z D
usual Y UW ZH AH W AH L|Y UW ZH UW AH L
v V IY
vacuum V AE K Y UW M
valve V AE L V
valves V AE L V Z
vehicle V IY HH IH K AH L|V IY IH K AH L
vent V EH N T
vents V EH N T S
very V EH R IY
vibrates V AY B R EY T S
vibration V AY B R EY SH AH N
visible V IH Z AH B AH L
volt V OW L T
voltage V OW L T AH JH|V OW L T IH JH
volts V OW L T S
w D AH B AH L Y UW
wait W EY T
walk W AO K|W AA K
wall W AO L
walls W AO L Z
want W AA N T|W AO N T
warm W AO R M
warmed W AO R M D
warmer W AO R M ER
warming W AO R M IH NG
warning W AO R N IH NG
warped W AO R P T
was W AA Z|W AH Z
washer W AA SH ER
washers W AA SH ER Z
wasn't W AA Z AH N T|W AH Z AH N T
watch W AA CH|W AO CH
water W AO T ER
wavy W EY V IY
way W EY
we W IY
we're W IY R|W IH R|W ER
weak W IY K
wear W EH R
wearing W EH R IH NG
wears W EH R Z
weather W EH DH ER
wedge W EH JH
wedged W EH JH D
wednesday W EH N Z D IY|W EH N Z D EY
week W IY K
weeks W IY K S
weep W IY P
weeping W IY P IH NG
weeps W IY P S
weight W EY T
weld W EH L D
welded W EH L D IH D
welds W EH L D Z
well W EH L
went W EH N T
were W ER
west W EH S T
wet W EH T
what W AH T|HH W AH T
what's W AH T S|HH W AH T S
wheel W IY L|HH W IY L
wheels W IY L Z|HH W IY L Z
when W EH N|HH W EH N|W IH N|HH W IH N
where W EH R|HH W EH R
which W IH CH|HH W IH CH
while W AY L|HH W AY L
whine W AY N|HH W AY N
white W AY T|HH W AY T
whole HH OW L
why W AY|HH W AY
wide W AY D
wiggle W IH G AH L
wild W AY L D
will W IH L|W AH L
winch W IH N CH
winched W IH N CH T
wind W AY N D|W IH N D
window W IH N D OW
windows W IH N D OW Z
windy W IH N D IY|W AY N D IY
wiped W AY P T
wire W AY ER|W AY R
wired W AY ER D|W AY R D
wires W AY ER Z|W AY R Z
wiring W AY R IH NG
with W IH DH|W IH TH
within W IH DH IH N|W IH TH IH N
without W IH TH AW T|W IH DH AW T
wobble W AA B AH L
wobbles W AA B AH L Z
wobbling W AA B AH L IH NG|W AA B L IH NG
wobbly W AA B AH L IY
won't W OW N T
wood W UH D
wooden W UH D AH N
word W ER D
work W ER K
worked W ER K T
working W ER K IH NG
works W ER K S
worn W AO R N
worse W ER S
worst W ER S T
would W UH D
wouldn't W UH D AH N T
wound W AW N D|W UW N D
wrap R AE P
wrapped R AE P T
wraps R AE P S
wrench R EH N CH
wrong R AO NG
x EH K S
y W AY
yard Y AA R D
yeah Y AE
year Y IH R
years Y IH R Z|Y ER Z
yellow Y EH L OW
yep Y EH P
yes Y EH S
yesterday Y EH S T ER D EY|Y EH S T ER D IY
yet Y EH T
you Y UW
you're Y UH R|Y UW R
your Y AO R|Y UH R
z Z IY
zero Z IH R OW|Z IY R OW
zip Z IH P
`;
