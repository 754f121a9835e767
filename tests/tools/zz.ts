import { readFileSync,writeFileSync } from 'node:fs';
import { analyze } from './renderVoiceAnalysis.ts';
import { readWav,writeWav } from './renderVoiceWav.ts';
import { synthesize, type Frame } from '../../src/speech/mouthClips/vocoder.ts';
const V: Record<string,(f:Frame[])=>Frame[]> = {
 A:f=>f, 
 B:f=>f.map(x=>({...x,voicing:x.voicing>0?3:0})),
 C:f=>f.map((x,i)=>({...x,gain:x.gain<0.0008?0:x.gain})),
 D:f=>f.map((x,i)=>{const l=x.lsf.slice();for(let k=1;k<l.length-1;k++){/* sharpen: narrow pairs */ } return x;}),
};
for(let i=1;i<=30;i++){const n=String(i).padStart(2,'0');const f=analyze(readWav(readFileSync(`/tmp/voice/s${n}.wav`)));
for(const k of ['A','B','C']) writeFileSync(`/tmp/voice/s${n}.${k}.wav`,writeWav(synthesize(V[k]!(f)),16000));}
