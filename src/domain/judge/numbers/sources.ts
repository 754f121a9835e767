/** Where the numbers come from. `fromMemory`: the text was not read again for this project. */
import type { Source } from '../../checks/outcome.ts';

export const COMMON_PRACTICE: Source = { kind: 'common-practice', text: 'common practice, no source' };

const published = (text: string): Source => ({ kind: 'published', text });
const remembered = (text: string): Source => ({ kind: 'published', text, fromMemory: true });

/** Maker's figures, by where they were read. */
export const PLACARD: Source = { kind: 'maker', text: "unit's tire placard" };
export const PLACARD_READ: Source = { kind: 'maker', text: 'tire placard as read in this round' };
export const SIDEWALL: Source = { kind: 'maker', text: "maximum molded in the tire's sidewall" };
export const MAKERS_TORQUE: Source = { kind: 'maker', text: "unit maker's torque figure" };
export const SHOPS_TORQUE: Source = { kind: 'common-practice', text: 'torque figure given by the shop' };
export const OWNERS_TORQUE: Source = { kind: 'common-practice', text: 'torque figure given by the owner' };
export const COLLAR_STAMP: Source = { kind: 'maker', text: "figures stamped in the cylinder's collar" };
export const ALARM_LABEL: Source = { kind: 'maker', text: "date on the alarm's label" };
export const CERTIFICATION_LABEL: Source = { kind: 'maker', text: "unit's certification label" };

export const TIRE_BOOKLET = published("tire makers' owner booklets, section on pressure");
export const TRAILER_MANUAL = published("utility-trailer owner's manuals with the federal tire text");
export const FMVSS_138 = published('49 CFR 571.138 S4.2(a) (cars and light trucks; the threshold is borrowed)');
export const FMVSS_138_TABLE = remembered('49 CFR 571.138, Table 1 (lowest of its floors)');
export const FMCSR_INFLATION = remembered('49 CFR 393.75(i), Table 1 (commercial vehicles; guidance here)');
export const FMCSR_TREAD = published('49 CFR 393.75(c); 49 CFR 570.62(a)');
export const CVSA = remembered('CVSA out-of-service criteria (commercial vehicles)');
export const TIRE_AGE = published("tire makers' guidance: yearly look from five years, replaced at ten");
export const TIRE_AGE_SIX = remembered('NHTSA TireWise: some vehicle makers advise replacing at six years');
export const FMVSS_110 = remembered('49 CFR 571.110 S4.2 (10,000 lb and under), 571.120 above');
export const LOAD_INDEX_STANDARD = published('ISO 4000-1 load index, as in public tire tables (120 and above from memory)');
export const ST_CHART = published('trade-press load and inflation chart for ST tires');
export const ATMOSPHERE_1976 = published('US Standard Atmosphere 1976, troposphere');
export const NIST_811 = published('NIST SP 811 (2008), appendix B.8');

export const LUG_MANUALS = published("trailer maker's and axle maker's manuals; parts sellers' charts");
export const LUG_STAGES = published("trailer owner's manuals: tightening in stages");
export const RETORQUE = published("trailer and axle makers' manuals: check at 10, 25 and 50 miles");
export const RETORQUE_YEARLY = published("trailer owner's manual: every 3 months or 3,000 miles");
export const WRENCH_STANDARD = remembered('ISO 6789-1: 4 percent from a fifth of the range up');
export const NUT_FACTOR = published('Shigley, Machinery’s Handbook: short form T = K D F');
export const NUT_SCATTER = remembered('VDI 2230: scatter of torque-controlled tightening');

export const OSHA_1413 = published('29 CFR 1926.1413(a)(2) (cranes; guidance here)');
export const OSHA_1413_DIAMETER = remembered('29 CFR 1926.1413(a)(2)(ii)(B) (cranes; guidance here)');
export const OSHA_SLINGS = published('29 CFR 1910.184(f)(5) (slings; guidance here)');
export const OSHA_RIGGING = remembered('29 CFR 1926.251(c)(4)(iv) (rigging; guidance here)');
export const MSHA_ROPE = published('30 CFR 56.19024 (mine hoists; guidance here)');
export const ROPE_LAY = remembered('wire rope handbooks: a lay is six to eight diameters');
export const STATICS = published('statics of a string pulled sideways at its middle');

export const TONGUE_BAND = published("tow-vehicle makers' handbooks: tongue weight 10 to 15 percent of the loaded trailer");
export const CHAIN_GUIDANCE = published('49 CFR 393.70(d) with official guidance (commercial vehicles)');
export const CHAIN_STATE = published('New Hampshire RSA 266:63: each chain');
export const DENSITIES = remembered('fuel and water densities at 60 °F, handbook values');

export const LP_TABLES = published('LP-gas tables, commercial propane at 60 °F');
export const PROPANE_2009 = remembered(
  'Lemmon, McLinden and Wagner 2009, vapor pressure of propane (its boiling point re-checked)',
);
export const REGULATOR = COMMON_PRACTICE;
export const FILL = remembered('49 CFR 173.304a(d): 42 percent of water capacity by weight');
export const REQUALIFY = remembered('49 CFR 180.209 as changed by 85 FR 68790 (sources differ on S)');
export const REQUALIFY_USE = remembered('49 CFR 180.205(c): overdue may be used up, not refilled');

export const UL_2034 = published('UL 2034 alarm times, as printed in alarm manuals');
export const EPA_CO = remembered('EPA outdoor air standard: 9 ppm over 8 hours');
export const NIOSH_CO = remembered('NIOSH limit: 35 ppm over a working day');
export const UL_1484 = remembered('UL 1484: gas alarm at or below a quarter of the lower flammable limit');
export const ALARM_LIFE = remembered("alarm makers' labels: life from the date made");

export const BATTERY_TABLE = remembered('industry tables of rest voltage, 25 °C; tables differ by up to 0.3 V');
export const BATTERY_FREEZE = remembered('industry table of freezing point by specific gravity');
export const BATTERY_COLD = remembered('capacity of lead batteries in the cold, makers’ data');
export const LITHIUM = remembered("lithium iron phosphate makers' sheets");
export const BREAKAWAY_RULE = published('49 CFR 393.43(d): brakes held 15 minutes (commercial vehicles)');
export const BREAKAWAY_BATTERY = COMMON_PRACTICE;

export const NWS_2001 = published('National Weather Service wind chill, 2001');
export const NWS_FROSTBITE = remembered('National Weather Service frostbite bands, edges as wind chill');
export const EC_FROSTBITE = remembered('Environment Canada frostbite time formula');
export const MN_ICE = published('Minnesota natural-resources guidance for new clear ice, December 2024; local authority first');
export const BEAUFORT: Source = remembered('Beaufort scale, middle of each force');
