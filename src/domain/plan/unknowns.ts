/** Figures and parts that the profile does not settle, each as a sentence for the briefing, with what is done instead. */
import type { RoundKind } from '../checks/check.ts';
import type { Unit } from '../unit/unit.ts';

/** Sentences to be spoken: no digits, no signs. */
export function unknownsOf(unit: Unit, round: RoundKind): readonly string[] {
  const sentences: string[] = [];
  const { tires, wheels, lift, alarms, heat } = unit;
  const isRoad = round === 'stop-on-the-road';
  const isTowing = round === 'before-towing';
  if (!isRoad && tires.placardColdPa === null) {
    sentences.push(
      tires.sidewallMaxPa === null
        ? 'I do not know the placard pressure or the sidewall maximum, so I keep tire pressures but cannot call them good.'
        : 'I do not know the placard pressure. The sidewall figure is a cap, not a target, so I cannot call a pressure good.',
    );
  }
  if (!isRoad && tires.placardColdPa !== null && tires.sidewallMaxPa === null) {
    sentences.push('I do not know the sidewall maximum of the tires. Never fill past the figure molded in the tire.');
  }
  if (!isRoad && wheels.torqueNm === null) {
    sentences.push('I do not know the lug torque of this unit. Use the figure from its handbook, and put it in the profile.');
  }
  if (!isRoad && wheels.lugs === null) sentences.push('I do not know how many lugs a wheel has. Count them as you go.');
  if (!isRoad && lift.kind !== 'none' && lift.pinsPerSide === null) {
    sentences.push('I do not know whether the frame has transport pins. Without pins, nothing but the lift holds it up.');
  }
  if (isTowing && lift.kind !== 'none' && lift.axleStubs === null) {
    sentences.push('I do not know whether the axle stubs take grease. A pivot without a fitting is sealed: leave it alone.');
  }
  if (isTowing && unit.battery.kind === null) {
    sentences.push('I do not know the kind of house battery, so its voltage is kept but says little.');
  }
  if (isTowing && heat.heater !== 'none') {
    if (alarms.co.fitted === false) {
      sentences.push('The profile has no carbon monoxide alarm. Fit one before anyone sleeps in it with a heater.');
    }
    if (heat.heater === null) sentences.push('I do not know what kind of heater it has. Answer for the one you find.');
  }
  if (!isRoad && unit.brakes === null) {
    sentences.push('I do not know whether it has electric brakes. Skip what it does not have, and say so.');
  }
  return sentences;
}
