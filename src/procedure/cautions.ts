/**
 * What can hurt in this work, the usual precaution, and to whom to defer: the one list. Common practice;
 * local codes and licensed practice come before anything here.
 */

/** A caution: the hazard, and what to do about it. */
export interface Caution {
  /** Its stable name in a program. */
  readonly id: string
  readonly hazard: string
  readonly text: string
}

/** @internal */
export const highVoltage: Caution = {
  id: 'highVoltage',
  hazard: 'high voltage',
  text:
    'More than 60 V DC can kill. Isolate the pack, lock it off, wait, and prove it dead with a tested meter before ' +
    'touching; wear rated gloves, and do not work alone. Local codes decide who may do this work.',
}

/** @internal */
export const shortCircuit: Caution = {
  id: 'shortCircuit',
  hazard: 'arc and short circuit',
  text:
    'A pack drives thousands of amperes through a dropped spanner, and a DC arc does not go out by itself. Take off ' +
    'rings, insulate tools and terminals, and fuse the pack at the pack, with a fuse rated for its full DC voltage.',
}

/** @internal */
export const overloadByController: Caution = {
  id: 'overloadByController',
  hazard: 'overload left to a controller',
  text:
    'Nothing independent opens on an overload of this cable: its controller alone keeps the current down. A controller ' +
    'that fails, or is set to more, burns it. Fit a fuse that opens on the overload, or a contactor that trips on it.',
}

/** @internal */
export const fallingIsolation: Caution = {
  id: 'fallingIsolation',
  hazard: 'isolation that falls',
  text:
    'Isolation that falls from one reading to the next is damage on its way, though it may still be enough. At one pole look ' +
    'for a chafed cable or a wet connector of that pole; at both alike for damp, dirt or coolant in a box. The first fault ' +
    'is not felt: with it, whoever touches the other pole has the whole pack through the body. Mend it before driving.',
}

/** @internal */
export const lithiumCells: Caution = {
  id: 'lithiumCells',
  hazard: 'lithium cells',
  text:
    'Overcharged, crushed, overheated, or charged below the limit of their maker (commonly 0 °C), they can burn, also ' +
    'hours later. Keep every cell within its limits with a monitor that can open the contactors.',
}

/** @internal */
export const joiningModules: Caution = {
  id: 'joiningModules',
  hazard: 'joining modules in parallel',
  text:
    'Modules at different voltages drive current into each other the moment they are joined, up to that of a short ' +
    'circuit. Bring all to one voltage first, join them through a fuse or a resistor, and fuse each of them for good.',
}

/** @internal */
export const crushZone: Caution = {
  id: 'crushZone',
  hazard: 'cells where a crash crushes the car',
  text:
    'Ahead of the front axle and behind the rear one a crash crushes the body, and with it what lies there. Place modules ' +
    'between the axles, or behind structure that holds; an engineer who tests vehicles decides what does.',
}

/** @internal */
export const storedCharge: Caution = {
  id: 'storedCharge',
  hazard: 'stored charge in capacitors',
  text:
    'The capacitors of a controller stay charged after the pack is off. Fit a discharge path, wait for it, and ' +
    'measure below 60 V before touching.',
}

/** @internal */
export const weldedContactor: Caution = {
  id: 'weldedContactor',
  hazard: 'a contactor that has welded',
  text:
    'A contactor that closed on too much, or opened on more than it breaks, can weld and look open. Fit two, one in each ' +
    'pole, have the control measure the voltage behind each before it closes, and prove the car dead with a meter.',
}

/** @internal */
export const mainsCharging: Caution = {
  id: 'mainsCharging',
  hazard: 'charging from the mains',
  text:
    'Mains voltage kills. Charge from an earthed outlet, with the body of the car earthed through the cable, behind a ' +
    'residual-current device of at most 30 mA that also sees smooth direct current: type B, or type A with a detector that ' +
    'opens at 6 mA (IEC 62955). A licensed electrician makes and tests the outlet; local codes come first.',
}

/** @internal */
export const feedingHouse: Caution = {
  id: 'feedingHouse',
  hazard: 'feeding a house',
  text:
    "A house's wiring may be fed only through a transfer arrangement that isolates it from the grid: without one the " +
    'supply kills those who work on the line. The work needs a licence, and local rules come first.',
}

/** @internal */
export const hotCoolant: Caution = {
  id: 'hotCoolant',
  hazard: 'hot coolant',
  text:
    'A warm circuit is under pressure and scalds when it is opened, and ethylene glycol is poisonous to people and ' +
    'animals, which like its taste. Let it cool, catch what runs out, and hand it in as local rules ask.',
}

/** @internal */
export const liftedCar: Caution = {
  id: 'liftedCar',
  hazard: 'lifting and running cars',
  text:
    'A car on a jack falls, and an electric drive turns without a sound. Use stands on firm ground, chock the wheels, ' +
    'and keep the drive isolated whenever hands are near a wheel or shaft.',
}

/** @internal */
export const brakingByMotor: Caution = {
  id: 'brakingByMotor',
  hazard: 'braking by the motor',
  text:
    'A driven rear axle that is braked to its grip lets the tail go, sooner in a bend, on wet roads and on lifting the ' +
    'accelerator: stay well below it. The wheel brakes must stop the car without the motor, which does not brake with a ' +
    'full or a cold pack.',
}

/** @internal */
export const turningShaft: Caution = {
  id: 'turningShaft',
  hazard: 'shafts at high speed',
  text:
    'A shaft that breaks comes through the floor. Keep its highest speed well below the critical one, have it balanced, ' +
    'and fit a safety loop.',
}

/** @internal */
export const brakesAndSteering: Caution = {
  id: 'brakesAndSteering',
  hazard: 'brakes and steering after a change of weight',
  text:
    'Brakes, tyres, springs and steering were made for the old weights and speeds. Have load ratings, brake balance ' +
    'and servo vacuum checked by someone qualified before the car goes on the road.',
}

/** @internal */
export const rearLock: Caution = {
  id: 'rearLock',
  hazard: 'rear wheels that lock first',
  text:
    'A car whose rear wheels lock first turns round within a second, and can kill. Figures decide nothing here: have the ' +
    'brakes measured on a roller bench at both weights, and try them with care off the road, dry and wet. Who is licensed ' +
    'for brakes does the work on them.',
}

/** @internal */
export const lostEngineBraking: Caution = {
  id: 'lostEngineBraking',
  hazard: 'engine braking that is gone',
  text:
    'Without the engine nothing holds the car back downhill but the motor, and it does not brake with a full or a cold ' +
    'pack, nor when its controller stops: on a long descent the wheel brakes take all, heat up and fade. Nor does a gear ' +
    'hold the parked car: the parking brake alone does.',
}

/** @internal */
export const approval: Caution = {
  id: 'approval',
  hazard: 'type approval and inspection',
  text:
    'A changed drive and changed axle loads usually need approval, inspection and new papers before public roads may ' +
    'be used. Ask the local authority before cutting metal.',
}
