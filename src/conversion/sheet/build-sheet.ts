/** The build sheet as it is written. `npm run docs` makes this file from the fields of the sheet. */
import type { Measured } from '../../quantity/index.js'

/** A build sheet as it is written: every quantity is text with its unit. */
export interface BuildSheet {
  /** Path of its JSON Schema, for the editor. */
  readonly $schema?: string | undefined
  /** Title of the build. */
  readonly title: string
  /** Remarks. */
  readonly note?: string | undefined
  /** The car as it is. */
  readonly car: {
    /** What the scales show. */
    readonly scales: {
      /** Mass on the front left wheel, in kg, at least 0 kg. */
      readonly frontLeft: Measured<'mass'>
      /** Mass on the front right wheel, in kg, at least 0 kg. */
      readonly frontRight: Measured<'mass'>
      /** Mass on the rear left wheel, in kg, at least 0 kg. */
      readonly rearLeft: Measured<'mass'>
      /** Mass on the rear right wheel, in kg, at least 0 kg. */
      readonly rearRight: Measured<'mass'>
    }
    /** Wheelbase, in m, above 0 m, usually 1.8 m to 2.9 m. */
    readonly wheelbase: Measured<'length'>
    /** The distances between the wheels of an axle. */
    readonly track: {
      /** Front track, in m, above 0 m, usually 1.1 m to 1.6 m. */
      readonly front: Measured<'length'>
      /** Rear track, in m, above 0 m, usually 1.1 m to 1.6 m. */
      readonly rear: Measured<'length'>
    }
    /**
     * The weighing with the rear axle raised. Without it: the height of the centre of gravity is not known, nor whether
     * the car tips before it slides: give raised.
     */
    readonly raised?: {
      /** Height by which the rear wheel centres were raised, in m, above 0 m. */
      readonly rise: Measured<'length'>
      /** Height of the wheel centres above the ground, car level, in m, above 0 m, usually 0.24 m to 0.33 m. */
      readonly loadedRadius: Measured<'length'>
      /** Mass on both front wheels, rear axle raised, in kg, at least 0 kg. */
      readonly front?: Measured<'mass'> | undefined
      /** Mass on the front left wheel, rear axle raised, in kg, at least 0 kg. */
      readonly frontLeft?: Measured<'mass'> | undefined
      /** Mass on the front right wheel, rear axle raised, in kg, at least 0 kg. */
      readonly frontRight?: Measured<'mass'> | undefined
      /** Further weighings so, to fit the height through all of them. */
      readonly others?: readonly (readonly [Measured<'length'>, Measured<'mass'>])[] | undefined
    } | undefined
    /** The front axle's share of the roll stiffness, a plain number, at least 0 and at most 1, usually 20 % to 90 %. */
    readonly frontRollShare?: Measured<'ratio'> | undefined
    /** The springs. */
    readonly springs?: {
      /** The springs of an axle. */
      readonly front: {
        /** Rate of one spring, in N/mm, above 0 N/mm, usually 12 N/mm to 80 N/mm. */
        readonly springRate: Measured<'springRate'>
        /** Motion ratio, spring travel over wheel travel, a plain number, above 0, usually 0.5 to 1.05. */
        readonly motionRatio: Measured<'ratio'>
        /**
         * Unsprung mass of the axle, both sides: wheels, hubs, brakes and a share of the links, in kg, at least 0 kg,
         * usually 24 kg to 180 kg.
         */
        readonly unsprung: Measured<'mass'>
      }
      /** The springs of an axle. */
      readonly rear: {
        /** Rate of one spring, in N/mm, above 0 N/mm, usually 12 N/mm to 80 N/mm. */
        readonly springRate: Measured<'springRate'>
        /** Motion ratio, spring travel over wheel travel, a plain number, above 0, usually 0.5 to 1.05. */
        readonly motionRatio: Measured<'ratio'>
        /**
         * Unsprung mass of the axle, both sides: wheels, hubs, brakes and a share of the links, in kg, at least 0 kg,
         * usually 24 kg to 180 kg.
         */
        readonly unsprung: Measured<'mass'>
      }
    } | undefined
    /** People and goods on board. */
    readonly payload: {
      /** Mass of people and goods, in kg, at least 0 kg, usually 0 kg to 1000 kg. */
      readonly mass: Measured<'mass'>
      /** A place in the car. */
      readonly at: {
        /** Distance behind the front axle line, negative ahead of it, in m, usually -2 m to 5 m. */
        readonly aft: Measured<'length'>
        /** Distance to the left of the centre line, negative to the right, in m, usually -2 m to 5 m. */
        readonly left: Measured<'length'>
        /** Height above the ground, in m, at least 0 m, usually 0 m to 2.5 m. */
        readonly up?: Measured<'length'> | undefined
      }
    }
    /**
     * The mark of the tyre, such as 155/80 R13 or 5.60-13. Without it: give one of tyre, rollingRadius and
     * rollingCircumference.
     */
    readonly tyre?: string | undefined
    /**
     * Rolling radius of the driven wheels, in m, above 0 m, usually 0.24 m to 0.33 m. Without it: give one of tyre,
     * rollingRadius and rollingCircumference.
     */
    readonly rollingRadius?: Measured<'length'> | undefined
    /**
     * Distance that a driven wheel rolls in one turn, in m, above 0 m, usually 1.5 m to 2.1 m. Without it: give one of
     * tyre, rollingRadius and rollingCircumference.
     */
    readonly rollingCircumference?: Measured<'length'> | undefined
    /** Drag coefficient times frontal area, in m², at least 0 m², usually 0.5 m² to 0.95 m². */
    readonly dragArea: Measured<'area'>
    /** Rolling resistance coefficient, a plain number, at least 0, usually 0.008 to 0.016. */
    readonly rollingResistance: Measured<'ratio'>
    /** Mass with that of the turning parts over mass, a plain number, at least 1, usually 1.02 to 1.4. */
    readonly rotatingFactor?: Measured<'ratio'> | undefined
    /** Which wheels are driven. */
    readonly drivenAxle: 'front' | 'rear'
    /** Friction coefficient of tyre and road, a plain number, above 0 and at most 2, usually 0.05 to 1.1. */
    readonly friction?: Measured<'ratio'> | undefined
    /** The greatest masses allowed. */
    readonly limits?: {
      /**
       * Greatest mass allowed, in kg, above 0 kg, usually 400 kg to 3500 kg. Without it: the mass of the car is not
       * held to a limit: give limits.gross.
       */
      readonly gross?: Measured<'mass'> | undefined
      /**
       * Greatest mass allowed on the front axle, in kg, above 0 kg, usually 150 kg to 2000 kg. Without it: the mass on
       * the front axle is not held to a limit: give limits.frontAxle.
       */
      readonly frontAxle?: Measured<'mass'> | undefined
      /**
       * Greatest mass allowed on the rear axle, in kg, above 0 kg, usually 150 kg to 2000 kg. Without it: the mass on
       * the rear axle is not held to a limit: give limits.rearAxle.
       */
      readonly rearAxle?: Measured<'mass'> | undefined
    } | undefined
  }
  /** Parts taken out. */
  readonly removed?: readonly {
    /** What it is called. */
    readonly name: string
    /** Mass of one, in kg, above 0 kg, usually 0.2 kg to 600 kg. */
    readonly mass: Measured<'mass'>
    /** A place in the car. */
    readonly at: {
      /** Distance behind the front axle line, negative ahead of it, in m, usually -2 m to 5 m. */
      readonly aft: Measured<'length'>
      /** Distance to the left of the centre line, negative to the right, in m, usually -2 m to 5 m. */
      readonly left: Measured<'length'>
      /** Height above the ground, in m, at least 0 m, usually 0 m to 2.5 m. */
      readonly up?: Measured<'length'> | undefined
    }
    /** How many there are, all at this place, a whole number, at least 1 and at most 100000. */
    readonly count?: number | undefined
    /** The sides of the part, seen from above; without them it is taken as a point. */
    readonly size?: {
      /** Length along the car, in m, at least 0 m. */
      readonly length: Measured<'length'>
      /** Width across the car, in m, at least 0 m. */
      readonly width: Measured<'length'>
    } | undefined
  }[] | undefined
  /** Parts put in. */
  readonly added?: readonly {
    /** What it is called. */
    readonly name: string
    /** Mass of one, in kg, above 0 kg, usually 0.2 kg to 600 kg. */
    readonly mass: Measured<'mass'>
    /** A place in the car. */
    readonly at: {
      /** Distance behind the front axle line, negative ahead of it, in m, usually -2 m to 5 m. */
      readonly aft: Measured<'length'>
      /** Distance to the left of the centre line, negative to the right, in m, usually -2 m to 5 m. */
      readonly left: Measured<'length'>
      /** Height above the ground, in m, at least 0 m, usually 0 m to 2.5 m. */
      readonly up?: Measured<'length'> | undefined
    }
    /** How many there are, all at this place, a whole number, at least 1 and at most 100000. */
    readonly count?: number | undefined
    /** The sides of the part, seen from above; without them it is taken as a point. */
    readonly size?: {
      /** Length along the car, in m, at least 0 m. */
      readonly length: Measured<'length'>
      /** Width across the car, in m, at least 0 m. */
      readonly width: Measured<'length'>
    } | undefined
  }[] | undefined
  /** The brakes, and what went with the engine. */
  readonly brakes?: {
    /** Front share of the force of the brakes, a plain number, above 0 and at most 1, usually 60 % to 80 %. */
    readonly frontBrakeShare?: Measured<'ratio'> | undefined
    /** The brakes of an axle. */
    readonly front?: {
      /**
       * Area of the pistons on one side of a disc, or of one cylinder of a drum, in m², above 0 m², usually 200 mm² to
       * 5000 mm².
       */
      readonly pistonArea: Measured<'area'>
      /**
       * Pull of the linings over the push of one side: twice the friction in a disc, 2 to 3 in a drum, a plain number,
       * above 0, usually 0.4 to 6.
       */
      readonly brakeFactor: Measured<'ratio'>
      /** Effective radius of the disc or drum, in m, above 0 m, usually 70 mm to 160 mm. */
      readonly effectiveRadius: Measured<'length'>
      /** Rolling radius of the wheels, in m, above 0 m, usually 0.24 m to 0.33 m. */
      readonly rollingRadius: Measured<'length'>
    } | undefined
    /** The brakes of an axle. */
    readonly rear?: {
      /**
       * Area of the pistons on one side of a disc, or of one cylinder of a drum, in m², above 0 m², usually 200 mm² to
       * 5000 mm².
       */
      readonly pistonArea: Measured<'area'>
      /**
       * Pull of the linings over the push of one side: twice the friction in a disc, 2 to 3 in a drum, a plain number,
       * above 0, usually 0.4 to 6.
       */
      readonly brakeFactor: Measured<'ratio'>
      /** Effective radius of the disc or drum, in m, above 0 m, usually 70 mm to 160 mm. */
      readonly effectiveRadius: Measured<'length'>
      /** Rolling radius of the wheels, in m, above 0 m, usually 0.24 m to 0.33 m. */
      readonly rollingRadius: Measured<'length'>
    } | undefined
    /** A valve that holds back the pressure behind. Without it: no valve holds back the pressure behind. */
    readonly valve?: {
      /** Pressure from which it does, in kPa, above 0 kPa, usually 500 kPa to 6000 kPa. */
      readonly pressure: Measured<'pressure'>
      /**
       * Rise of the pressure behind it over that before it, from there on, a plain number, at least 0 and at most 1.
       */
      readonly slope: Measured<'ratio'>
    } | undefined
    /** Whether an anti-lock system holds the wheels of each axle. Without it: no anti-lock system is fitted. */
    readonly antiLock?: boolean | undefined
    /**
     * Force with which the motor goes on braking at the driven wheels while the pedal is pressed, in N, at least 0 N,
     * usually 0 N to 5000 N.
     */
    readonly regeneration?: Measured<'force'> | undefined
    /** A place in the car. Without it: the driver sits where people and goods are. */
    readonly driver?: {
      /** Distance behind the front axle line, negative ahead of it, in m, usually -2 m to 5 m. */
      readonly aft: Measured<'length'>
      /** Distance to the left of the centre line, negative to the right, in m, usually -2 m to 5 m. */
      readonly left: Measured<'length'>
      /** Height above the ground, in m, at least 0 m, usually 0 m to 2.5 m. */
      readonly up?: Measured<'length'> | undefined
    } | undefined
    /** Whether a vacuum servo helps the foot. */
    readonly servo?: boolean | undefined
    /** What makes its vacuum: a load of lowVoltage.loads by its name, or none. */
    readonly vacuum?: string | undefined
    /** Force at the tyres with which the parking brake holds, as measured, in N, above 0 N, usually 1 kN to 10 kN. */
    readonly parking?: Measured<'force'> | undefined
  } | undefined
  /** A module. */
  readonly module?: {
    /** What the module is called. */
    readonly name: string
    /** Cells in series, a whole number, at least 1 and at most 1000. */
    readonly cellsInSeries: number
    /** What its cells are made of. */
    readonly chemistry?: 'NMC' | 'LFP' | undefined
    /** Nominal voltage of the module, in V, above 0 V. */
    readonly nominalVoltage: Measured<'voltage'>
    /** Lowest voltage that the module may have, in V, above 0 V. */
    readonly minimumVoltage: Measured<'voltage'>
    /** Voltage of the full module, in V, above 0 V. */
    readonly maximumVoltage: Measured<'voltage'>
    /** Capacity of the module, in Ah, above 0 Ah, usually 20 Ah to 200 Ah. */
    readonly capacity: Measured<'charge'>
    /**
     * Capacity of the module when it was new, at the same current and temperature, in Ah, above 0 Ah, usually 20 Ah to
     * 200 Ah.
     */
    readonly newCapacity?: Measured<'charge'> | undefined
    /** The limits of each of its cells, and how unlike they are. */
    readonly cell?: {
      /** Lowest voltage that a cell may have, in V, above 0 V, usually 2 V to 3.3 V. */
      readonly minimumVoltage: Measured<'voltage'>
      /** Highest voltage that a cell may have, in V, above 0 V, usually 3.4 V to 4.4 V. */
      readonly maximumVoltage: Measured<'voltage'>
      /**
       * Most by which a cell of the full or empty module is off the mean of all, in V, at least 0 V, usually 0 V to 0.1
       * V.
       */
      readonly spread?: Measured<'voltage'> | undefined
    } | undefined
    /** Resistance of the module, warm, in mΩ, above 0 mΩ. */
    readonly resistance: Measured<'resistance'>
    /** Resistance of the module, warm, within 10 ms, such as at 1 kHz, in mΩ, above 0 mΩ. */
    readonly ohmicResistance?: Measured<'resistance'> | undefined
    /** Its resistance in the cold. */
    readonly cold?: {
      /** Temperature of the cold measurement, in °C, above -273.15 °C and below 25 °C, usually -40 °C to 20 °C. */
      readonly temperature: Measured<'temperature'>
      /** Resistance of the module at that temperature, in mΩ, above 0 mΩ. */
      readonly resistance: Measured<'resistance'>
    } | undefined
    /** Mass of the module, in kg, above 0 kg. */
    readonly mass: Measured<'mass'>
    /** Discharge current that it bears all day, in A, above 0 A. */
    readonly continuousCurrent: Measured<'current'>
    /** Discharge current that it bears for a short time, in A, above 0 A, usually 20 A to 3000 A. */
    readonly peakCurrent?: Measured<'current'> | undefined
    /** Charge current that it bears, in A, above 0 A, usually 1 A to 600 A. */
    readonly chargeCurrent?: Measured<'current'> | undefined
    /** Charge current that it bears by the temperature of the cells, the temperatures rising. */
    readonly chargeCurrents?: readonly (readonly [Measured<'temperature'>, Measured<'current'>])[] | undefined
    /** The temperatures at which its cells may work. */
    readonly temperatures?: {
      /** The temperatures of the cells on charge. */
      readonly charge: {
        /** Lowest temperature of the cells on charge, in °C, usually -10 °C to 15 °C. */
        readonly minimum: Measured<'temperature'>
        /** Highest temperature of the cells on charge, in °C, usually 30 °C to 75 °C. */
        readonly maximum: Measured<'temperature'>
      }
      /** The temperatures of the cells on discharge. */
      readonly discharge: {
        /** Lowest temperature of the cells on discharge, in °C, usually -40 °C to 15 °C. */
        readonly minimum: Measured<'temperature'>
        /** Highest temperature of the cells on discharge, in °C, usually 30 °C to 75 °C. */
        readonly maximum: Measured<'temperature'>
      }
    } | undefined
    /** The sides of the module. */
    readonly size?: {
      /** Length, in m, above 0 m. */
      readonly length: Measured<'length'>
      /** Width, in m, above 0 m. */
      readonly width: Measured<'length'>
      /** Height, in m, above 0 m. */
      readonly height: Measured<'length'>
    } | undefined
    /** Specific heat of the module, in J/(kg·K), above 0 J/(kg·K), usually 600 J/(kg·K) to 1600 J/(kg·K). */
    readonly specificHeat?: Measured<'specificHeat'> | undefined
    /** Points [state of charge, voltage at rest] in rising order. */
    readonly openCircuit?: readonly (readonly [Measured<'ratio'>, Measured<'voltage'>])[] | undefined
  } | undefined
  /** The pack made of modules. */
  readonly pack?: {
    /** How many modules are in series, a whole number, at least 1 and at most 1000. */
    readonly series: number
    /** How many modules are in parallel, a whole number, at least 1 and at most 1000. */
    readonly parallel: number
    /**
     * Whole strings side by side, in place of modules that are joined in each group. Without it: modules in parallel
     * are joined in each group: no whole strings lie side by side.
     */
    readonly strings?: {
      /** A fuse. */
      readonly fuse?: {
        /** What it is called. */
        readonly name?: string | undefined
        /** Its class, as its standard names it. */
        readonly class?: 'gG' | 'gR' | 'gS' | 'gPV' | 'aR' | 'aM' | 'automotive' | 'UL 248' | undefined
        /** Rated current, in A, above 0 A, usually 1 A to 1250 A. */
        readonly rating: Measured<'current'>
        /** Its rated voltages. */
        readonly voltage: {
          /** Rated voltage for direct current, in V, above 0 V, usually 12 V to 4000 V. */
          readonly dc?: Measured<'voltage'> | undefined
          /** Rated voltage for alternating current, in V, above 0 V, usually 12 V to 4000 V. */
          readonly ac?: Measured<'voltage'> | undefined
        }
        /** Greatest direct current that it breaks, in A, above 0 A, usually 0.2 kA to 500 kA. */
        readonly breakingCapacity: Measured<'current'>
        /** Time constant of the circuit in which it breaks that current, in s, above 0 s, usually 0.5 ms to 30 ms. */
        readonly timeConstant?: Measured<'time'> | undefined
        /** Least direct current that it breaks, in A, above 0 A. */
        readonly leastBreakingCurrent?: Measured<'current'> | undefined
        /**
         * Melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0 A²·s, usually 1
         * A²·s to 30 kA²·s.
         */
        readonly meltingIntegral?: Measured<'jouleIntegral'> | undefined
        /** Greatest joule integral until it has cleared, in A²·s, above 0 A²·s, usually 1 A²·s to 30 kA²·s. */
        readonly clearingIntegral?: Measured<'jouleIntegral'> | undefined
        /** Its time–current curve, the currents rising. */
        readonly curve?: readonly (readonly [Measured<'current'>, Measured<'time'>])[] | undefined
        /** Share of its rating by the temperature around it, the temperatures rising. */
        readonly derating?: readonly (readonly [Measured<'temperature'>, Measured<'ratio'>])[] | undefined
        /** Time constant with which it warms, in s, above 0 s, usually 10 s to 1 h. */
        readonly thermalTimeConstant?: Measured<'time'> | undefined
      } | undefined
      /**
       * Joule integral that the cable of a string withstands; 1 kA²·s is (1 kA)²·s, in A²·s, above 0 A²·s, usually 0.01
       * kA²·s to 2000 kA²·s. Without it: what the link of a string lets through is not held to the cable of the string:
       * give withstand.
       */
      readonly withstand?: Measured<'jouleIntegral'> | undefined
    } | undefined
    /** Number of modules at hand, a whole number, at least 1. */
    readonly available?: number | undefined
    /** Usable share of the energy, a plain number, above 0 and at most 1. */
    readonly usable: Measured<'ratio'>
    /** How many times as much the pack resists at the end of its life, a plain number, at least 1 and at most 10. */
    readonly ageing?: Measured<'ratio'> | undefined
    /** Inductance of the pack, in µH, at least 0 µH, usually 0.1 µH to 100 µH. */
    readonly inductance?: Measured<'inductance'> | undefined
    /** A year of the pack, for what models say of its life. */
    readonly life?: {
      /** How often a year each journey of the sheet is made, by its name. */
      readonly journeys: { readonly [name: string]: number }
      /** Temperatures of the cells over a year, with the share of the year for each; the shares make 100 %. */
      readonly temperatures: readonly (readonly [Measured<'temperature'>, Measured<'ratio'>])[]
      /** How it is charged. */
      readonly charge: {
        /** State of charge to which it is charged, a plain number, above 0 and at most 1. */
        readonly to: Measured<'ratio'>
        /** State of charge at which it is charged, a plain number, at least 0 and below 1. */
        readonly from: Measured<'ratio'>
        /**
         * State of charge in which it stands most of the time, a plain number, at least 0 and at most 1. Without it:
         * the pack stands at the state to which it is charged: where it is charged just before a drive, give standing.
         */
        readonly standing?: Measured<'ratio'> | undefined
      }
      /** How many years to tell, a whole number, at least 1 and at most 30. */
      readonly years?: number | undefined
    } | undefined
    /** The bays for the modules. */
    readonly bays: { readonly [name: string]: {
      /** Title, for people to read; its key is its name in ids. */
      readonly title?: string | undefined
      /** A place in the car. */
      readonly at: {
        /** Distance behind the front axle line, negative ahead of it, in m, usually -2 m to 5 m. */
        readonly aft: Measured<'length'>
        /** Distance to the left of the centre line, negative to the right, in m, usually -2 m to 5 m. */
        readonly left: Measured<'length'>
        /** Height above the ground, in m, at least 0 m, usually 0 m to 2.5 m. */
        readonly up?: Measured<'length'> | undefined
      }
      /** How many modules it holds, a whole number, at least 0. */
      readonly capacity: number
      /** Greatest mass that it carries, in kg, above 0 kg. Without it: the mass in the bay is not held to a limit. */
      readonly maximumMass?: Measured<'mass'> | undefined
      /**
       * The sides of the room within. Without it: whether the modules fit into the bay by their size is not checked:
       * only capacity counts.
       */
      readonly inside?: {
        /** Length, in m, above 0 m. */
        readonly length: Measured<'length'>
        /** Width, in m, above 0 m. */
        readonly width: Measured<'length'>
        /** Height, in m, above 0 m. */
        readonly height: Measured<'length'>
      } | undefined
      /** The way from one module to the next. */
      readonly pitch?: {
        /** Step to the rear from one module to the next, in m. */
        readonly aft?: Measured<'length'> | undefined
        /** Step to the left from one module to the next, in m. */
        readonly left?: Measured<'length'> | undefined
        /** Step upwards from one module to the next, in m. */
        readonly up?: Measured<'length'> | undefined
      } | undefined
    } }
  } | undefined
  /** The motor with its controller. */
  readonly motor?: {
    /** Torque for a short time, in N·m, above 0 N·m, usually 40 N·m to 350 N·m. */
    readonly peakTorque: Measured<'torque'>
    /** Power at the shaft for a short time, in kW, above 0 kW, usually 5 kW to 400 kW. */
    readonly peakPower?: Measured<'power'> | undefined
    /** Highest speed, in rpm, above 0 rpm, usually 3000 rpm to 16000 rpm. */
    readonly maximumSpeed: Measured<'angularSpeed'>
    /** Torque all day, in N·m, above 0 N·m. */
    readonly continuousTorque?: Measured<'torque'> | undefined
    /** Power at the shaft all day, in kW, above 0 kW, usually 5 kW to 80 kW. */
    readonly continuousPower?: Measured<'power'> | undefined
    /** For how long it gives its peak, from cold, in s, above 0 s, usually 5 s to 1 h. */
    readonly peakTime?: Measured<'time'> | undefined
    /** Time constant with which its windings warm, in s, above 0 s, usually 30 s to 90 min. */
    readonly timeConstant?: Measured<'time'> | undefined
    /** Points [speed, torque] from standstill up to the highest speed. */
    readonly curve?: readonly (readonly [Measured<'angularSpeed'>, Measured<'torque'>])[] | undefined
    /** Voltage at the controller for which the figures hold, in V, above 0 V. */
    readonly ratedVoltage?: Measured<'voltage'> | undefined
    /** What it loses, with its controller. */
    readonly loss?: {
      /** Copper loss coefficient, in W/(N·m)², at least 0 W/(N·m)². */
      readonly lossPerTorqueSquared: Measured<'lossPerTorqueSquared'>
      /** Iron loss coefficient, in W/(rad/s), at least 0 W/(rad/s). */
      readonly lossPerSpeed?: Measured<'lossPerSpeed'> | undefined
      /** Windage coefficient, in W/(rad/s)³, at least 0 W/(rad/s)³. */
      readonly lossPerSpeedCubed?: Measured<'lossPerSpeedCubed'> | undefined
      /** Constant loss, in kW, at least 0 kW. */
      readonly constant?: Measured<'power'> | undefined
    } | undefined
    /** Efficiency of motor and controller, a plain number, above 0 and at most 1, usually 0.85 to 0.96. */
    readonly efficiency: Measured<'ratio'>
    /** Moment of inertia of the rotor, in kg·m², at least 0 kg·m². */
    readonly inertia?: Measured<'inertia'> | undefined
  } | undefined
  /** The motor controller. */
  readonly controller?: {
    /** Lowest voltage at which it works, in V, at least 0 V, usually 0 V to 600 V. */
    readonly minimumVoltage: Measured<'voltage'>
    /** Highest voltage that it bears, in V, above 0 V. */
    readonly maximumVoltage: Measured<'voltage'>
    /** Most current that it draws from the pack, in A, above 0 A. */
    readonly batteryCurrent: Measured<'current'>
    /** Current that it draws from the pack all day, in A, above 0 A. */
    readonly continuousCurrent?: Measured<'current'> | undefined
    /** For how long it draws that current at most, in s, above 0 s, usually 1 s to 1 h. */
    readonly batteryCurrentTime?: Measured<'time'> | undefined
    /** Most current that it sends back to the pack, in A, at least 0 A. */
    readonly chargeCurrent?: Measured<'current'> | undefined
    /** Share of the braking energy at the wheels that goes to the motor, a plain number, at least 0 and at most 1. */
    readonly regeneration?: Measured<'ratio'> | undefined
    /** Capacitance at its input, in µF, above 0 µF. */
    readonly capacitance: Measured<'capacitance'>
  } | undefined
  /** The gearbox and the final drive, which stay. */
  readonly gearbox?: {
    /** The ratios of the gears, from the lowest speed up. */
    readonly gears: { readonly [name: string]: Measured<'ratio'> } | readonly Measured<'ratio'>[]
    /** Ratio of the final drive, a plain number, above 0, usually 2.5 to 14. */
    readonly finalDrive: Measured<'ratio'>
    /** Efficiency from the motor to the wheels, a plain number, above 0 and at most 1. */
    readonly efficiency: Measured<'ratio'>
    /** Input torque for which the gearbox was made, in N·m, above 0 N·m, usually 20 N·m to 1000 N·m. */
    readonly ratedInputTorque?: Measured<'torque'> | undefined
  } | undefined
  /** Power of lamps, pumps and the 12 V system, in kW, at least 0 kW, usually 100 W to 500 W. */
  readonly auxiliaries?: Measured<'power'> | undefined
  /** The runs of cable. */
  readonly runs?: { readonly [name: string]: {
    /** Title, for people to read; its key is its name in ids. */
    readonly title?: string | undefined
    /**
     * Steady current, in A, above 0 A, usually 0.5 A to 800 A. Without it: the run carries the currents of the journey
     * that asks most of it.
     */
    readonly current?: Measured<'current'> | undefined
    /** Section of a cable that is laid already. Without it: the section is chosen. */
    readonly section?: string | undefined
    /** One-way length of the run, in m, at least 0 m, usually 0 m to 15 m. */
    readonly length: Measured<'length'>
    /** Metal of the conductor. */
    readonly conductor?: 'copper' | 'aluminium' | undefined
    /** Continuous limit of the insulation, in °C, usually 60 °C to 250 °C. */
    readonly insulationLimit?: Measured<'temperature'> | undefined
    /** Limit of the insulation in a fault of at most 5 s, in °C, usually 140 °C to 350 °C. */
    readonly faultLimit?: Measured<'temperature'> | undefined
    /**
     * Temperature of the air around the cables, in °C, at least -23.15 °C and below 226.85 °C, usually -20 °C to 125
     * °C.
     */
    readonly ambient?: Measured<'temperature'> | undefined
    /** Greatest drop. Without it: the voltage drop is not held to a limit: give maximumDrop. */
    readonly maximumDrop?: Measured<'voltage'> | Measured<'ratio'> | undefined
    /** Sections to choose from. */
    readonly series?: 'metric' | 'american' | undefined
    /** How the cables lie. */
    readonly laid?: 'apart' | 'touching' | undefined
    /** Outer diameters by section, such as { '35 mm²': '11.5 mm' }. */
    readonly geometry?: { readonly [name: string]: Measured<'length'> } | undefined
    /** What the terminals at both ends are made for, in °C, usually 60 °C to 200 °C. */
    readonly terminalLimit?: Measured<'temperature'> | undefined
    /** Share of its ampacity that a bundle leaves a cable, a plain number, above 0 and at most 1. */
    readonly bundled?: Measured<'ratio'> | undefined
    /** What the insulation bears for hours in an overload, as its maker states, in °C, usually 85 °C to 300 °C. */
    readonly overloadLimit?: Measured<'temperature'> | undefined
    /** Distance between the centres of conductors that lie apart, in m, above 0 m, usually 10 mm to 1 m. */
    readonly spacing?: Measured<'length'> | undefined
    /** The protective or bonding conductor through which a fault to the body flows. */
    readonly protectiveConductor?: {
      /** Its section, in m², above 0 m², usually 1 mm² to 300 mm². */
      readonly area: Measured<'area'>
      /** Metal of the conductor. */
      readonly conductor?: 'copper' | 'aluminium' | undefined
      /**
       * How warm it is before a fault, in °C. Without it: the protective conductor is as warm before a fault as the
       * cable may be all day.
       */
      readonly initial?: Measured<'temperature'> | undefined
      /**
       * What its insulation bears for at most 5 s, in °C, usually 140 °C to 350 °C. Without it: the insulation of the
       * protective conductor bears as much in a fault as that of the cable.
       */
      readonly faultLimit?: Measured<'temperature'> | undefined
    } | undefined
    /**
     * Temperature of the air around the fuse, in °C, above -90 °C and below 200 °C. Without it: it is that of the air
     * around the cables.
     */
    readonly fuseAmbient?: Measured<'temperature'> | undefined
    /**
     * Share of its rating that the heat around leaves the fuse, in place of what its class tells, a plain number, at
     * least 0.2 and at most 1.2, usually 0.5 to 1.
     */
    readonly ambientFactor?: Measured<'ratio'> | undefined
    /**
     * Current at which a fuse of no stated class opens within its conventional time, over its rating, a plain number,
     * above 1 and at most 3, usually 1.3 to 2.2.
     */
    readonly fusingFactor?: Measured<'ratio'> | undefined
    /**
     * How often the peaks of the load, and a full pull, come in the life of the car, a whole number, at least 1 and at
     * most 1000000.
     */
    readonly cycles?: number | undefined
    /** The family in which ratings are sought. */
    readonly family?: 'R10' | 'UL' | 'blade' | 'bolt-down' | undefined
    /** Ratings that can be had, in place of those of a family. */
    readonly ratings?: readonly Measured<'current'>[] | undefined
    /** What opens on an overload in place of the fuse, such as a contactor. */
    readonly overload?: {
      /** What opens. */
      readonly by: string
      /** Current at which it opens, in A, above 0 A. */
      readonly current: Measured<'current'>
      /** Within what time, in s, above 0 s. */
      readonly time: Measured<'time'>
      /** Greatest direct current that it breaks, in A, above 0 A. */
      readonly breaks: Measured<'current'>
    } | undefined
    /** What it feeds. */
    readonly feeds?: 'controller' | 'other' | undefined
    /** Fuses to choose from. */
    readonly fuses?: readonly {
      /** What it is called. */
      readonly name?: string | undefined
      /** Its class, as its standard names it. */
      readonly class?: 'gG' | 'gR' | 'gS' | 'gPV' | 'aR' | 'aM' | 'automotive' | 'UL 248' | undefined
      /** Rated current, in A, above 0 A, usually 1 A to 1250 A. */
      readonly rating: Measured<'current'>
      /** Its rated voltages. */
      readonly voltage: {
        /** Rated voltage for direct current, in V, above 0 V, usually 12 V to 4000 V. */
        readonly dc?: Measured<'voltage'> | undefined
        /** Rated voltage for alternating current, in V, above 0 V, usually 12 V to 4000 V. */
        readonly ac?: Measured<'voltage'> | undefined
      }
      /** Greatest direct current that it breaks, in A, above 0 A, usually 0.2 kA to 500 kA. */
      readonly breakingCapacity: Measured<'current'>
      /** Time constant of the circuit in which it breaks that current, in s, above 0 s, usually 0.5 ms to 30 ms. */
      readonly timeConstant?: Measured<'time'> | undefined
      /** Least direct current that it breaks, in A, above 0 A. */
      readonly leastBreakingCurrent?: Measured<'current'> | undefined
      /**
       * Melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0 A²·s, usually 1
       * A²·s to 30 kA²·s.
       */
      readonly meltingIntegral?: Measured<'jouleIntegral'> | undefined
      /** Greatest joule integral until it has cleared, in A²·s, above 0 A²·s, usually 1 A²·s to 30 kA²·s. */
      readonly clearingIntegral?: Measured<'jouleIntegral'> | undefined
      /** Its time–current curve, the currents rising. */
      readonly curve?: readonly (readonly [Measured<'current'>, Measured<'time'>])[] | undefined
      /** Share of its rating by the temperature around it, the temperatures rising. */
      readonly derating?: readonly (readonly [Measured<'temperature'>, Measured<'ratio'>])[] | undefined
      /** Time constant with which it warms, in s, above 0 s, usually 10 s to 1 h. */
      readonly thermalTimeConstant?: Measured<'time'> | undefined
    }[] | undefined
  } } | undefined
  /** Fuses to choose from. */
  readonly fuses?: readonly {
    /** What it is called. */
    readonly name?: string | undefined
    /** Its class, as its standard names it. */
    readonly class?: 'gG' | 'gR' | 'gS' | 'gPV' | 'aR' | 'aM' | 'automotive' | 'UL 248' | undefined
    /** Rated current, in A, above 0 A, usually 1 A to 1250 A. */
    readonly rating: Measured<'current'>
    /** Its rated voltages. */
    readonly voltage: {
      /** Rated voltage for direct current, in V, above 0 V, usually 12 V to 4000 V. */
      readonly dc?: Measured<'voltage'> | undefined
      /** Rated voltage for alternating current, in V, above 0 V, usually 12 V to 4000 V. */
      readonly ac?: Measured<'voltage'> | undefined
    }
    /** Greatest direct current that it breaks, in A, above 0 A, usually 0.2 kA to 500 kA. */
    readonly breakingCapacity: Measured<'current'>
    /** Time constant of the circuit in which it breaks that current, in s, above 0 s, usually 0.5 ms to 30 ms. */
    readonly timeConstant?: Measured<'time'> | undefined
    /** Least direct current that it breaks, in A, above 0 A. */
    readonly leastBreakingCurrent?: Measured<'current'> | undefined
    /**
     * Melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0 A²·s, usually 1 A²·s
     * to 30 kA²·s.
     */
    readonly meltingIntegral?: Measured<'jouleIntegral'> | undefined
    /** Greatest joule integral until it has cleared, in A²·s, above 0 A²·s, usually 1 A²·s to 30 kA²·s. */
    readonly clearingIntegral?: Measured<'jouleIntegral'> | undefined
    /** Its time–current curve, the currents rising. */
    readonly curve?: readonly (readonly [Measured<'current'>, Measured<'time'>])[] | undefined
    /** Share of its rating by the temperature around it, the temperatures rising. */
    readonly derating?: readonly (readonly [Measured<'temperature'>, Measured<'ratio'>])[] | undefined
    /** Time constant with which it warms, in s, above 0 s, usually 10 s to 1 h. */
    readonly thermalTimeConstant?: Measured<'time'> | undefined
  }[] | undefined
  /** Greatest height above the sea, in m, at least 0 m and at most 5000 m. */
  readonly altitude?: Measured<'length'> | undefined
  /** The precharge of the controller, and the contactor that closes after it. */
  readonly precharge?: {
    /** Time allowed, in s, above 0 s, usually 0.1 s to 10 s. */
    readonly time: Measured<'time'>
    /** Share of the voltage at which the contactor closes, a plain number, above 0 and below 1. */
    readonly target?: Measured<'ratio'> | undefined
    /** Resistance of the precharge resistor, where it is chosen, in mΩ, above 0 mΩ, usually 5 Ω to 5 kΩ. */
    readonly resistance?: Measured<'resistance'> | undefined
    /** Greatest current that the contactor makes, in A, above 0 A, usually 5 A to 5000 A. */
    readonly makingCapacity?: Measured<'current'> | undefined
    /**
     * Resistance through which it discharges, in mΩ, above 0 mΩ. Without it: how long the capacitor stays charged is
     * not held to a limit: give dischargeResistance.
     */
    readonly dischargeResistance?: Measured<'resistance'> | undefined
    /** Whether that resistance stays across the capacitor while the pack is on. */
    readonly dischargePath?: 'stays' | 'opens' | undefined
    /** Power for which it is rated, all day, in kW, above 0 kW, usually 0.25 W to 2 kW. */
    readonly dischargePower?: Measured<'power'> | undefined
  } | undefined
  /** The bus bars. */
  readonly bars?: { readonly [name: string]: {
    /** Title, for people to read; its key is its name in ids. */
    readonly title?: string | undefined
    /** Current, all day, in A, above 0 A, usually 10 A to 800 A. */
    readonly current: Measured<'current'>
    /** Temperature of the air around it, in °C, at least -40 °C and at most 105 °C, usually -20 °C to 85 °C. */
    readonly ambient?: Measured<'temperature'> | undefined
    /** Highest temperature of the bar, in °C, at least 0 °C and at most 130 °C, usually 50 °C to 120 °C. */
    readonly limit?: Measured<'temperature'> | undefined
    /** Length between its joints, in m, above 0 m, usually 20 mm to 2 m. */
    readonly length: Measured<'length'>
    /** Its surface. */
    readonly finish?: 'bare' | 'painted' | undefined
    /** Bars side by side, a thickness apart, a whole number, at least 1 and at most 2. */
    readonly count?: number | undefined
    /**
     * The joints at both ends, with dry bolts of class 8.8. Without it: the joints of the bar are not judged: give
     * ends.
     */
    readonly ends?: {
      /** Thread of the bolts. */
      readonly bolt: 'M6' | 'M8' | 'M10' | 'M12'
      /** Bolts in a joint, a whole number, at least 1 and at most 6. */
      readonly bolts?: number | undefined
      /** Torque of each bolt, in N·m, above 0 N·m, usually 2 N·m to 100 N·m. */
      readonly torque?: Measured<'torque'> | undefined
      /** The published torques that it is held to. */
      readonly torques?: 'DIN 43673' | 'machine handbook' | undefined
      /** Coefficient of friction, a plain number, at least 0.05 and at most 0.5. */
      readonly friction?: Measured<'ratio'> | undefined
      /**
       * Resistances of like joints, as measured. Without it: the joints were not measured against each other: give
       * ends.measured.
       */
      readonly measured?: readonly Measured<'resistance'>[] | undefined
    } | undefined
    /**
     * The bars to choose from, in their order. Without it: the bars of DIN 43671 up to 600 mm² are tried, the smallest
     * first.
     */
    readonly candidates?: readonly {
      /** Width, in m, above 0 m, usually 5 mm to 120 mm. */
      readonly width: Measured<'length'>
      /** Thickness, in m, above 0 m, usually 1 mm to 12 mm. */
      readonly thickness: Measured<'length'>
    }[] | undefined
  } } | undefined
  /** The insulation of the traction circuit from the chassis. */
  readonly insulation?: {
    /** Which circuits are connected. */
    readonly circuit?: 'DC' | 'DC and AC' | undefined
    /** What all of the AC side has beyond basic insulation. */
    readonly acSide?: 'double insulation' | 'robust housings' | undefined
    /** An isolation test with a voltmeter. Without it: the isolation was not measured. */
    readonly readings?: {
      /** Voltage between the poles during the test, in V, above 0 V, usually 48 V to 400 V. */
      readonly packVoltage: Measured<'voltage'>
      /** Voltage from the positive pole to the chassis, in V, at least 0 V. */
      readonly positive: Measured<'voltage'>
      /** Voltage from the negative pole to the chassis, in V, at least 0 V. */
      readonly negative: Measured<'voltage'>
      /** Larger of the two voltages, with the known resistance across it, in V, above 0 V. */
      readonly loadedReading: Measured<'voltage'>
      /** Known resistance, put from that pole to the chassis, in mΩ, above 0 mΩ. */
      readonly insertedResistance: Measured<'resistance'>
    } | undefined
    /** The monitor of the isolation. Without it: no monitor watches the isolation. */
    readonly monitor?: {
      /** Isolation at which it warns, in mΩ, above 0 mΩ, usually 10 kΩ to 2 MΩ. */
      readonly warns?: Measured<'resistance'> | undefined
      /** Isolation at which it opens the contactors, in mΩ, above 0 mΩ, usually 5 kΩ to 1 MΩ. */
      readonly opens?: Measured<'resistance'> | undefined
      /** Its own resistance to the chassis, in mΩ, above 0 mΩ, usually 50 kΩ to 5 MΩ. */
      readonly ownResistance?: Measured<'resistance'> | undefined
      /**
       * Time in which it must tell, in s, above 0 s, usually 1 s to 120 s. Without it: how soon the monitor tells is
       * not held to a limit: give responseTime.
       */
      readonly responseTime?: Measured<'time'> | undefined
    } | undefined
    /** Capacitances to the chassis, of filters and cables together. */
    readonly capacitance?: {
      /** From the positive pole, in µF, at least 0 µF, usually 1 nF to 10 µF. */
      readonly positive: Measured<'capacitance'>
      /** From the negative pole, in µF, at least 0 µF, usually 1 nF to 10 µF. */
      readonly negative: Measured<'capacitance'>
    } | undefined
    /** Distances that insulate. */
    readonly distances?: { readonly [name: string]: {
      /** Title, for people to read; its key is its name in ids. */
      readonly title?: string | undefined
      /** Highest working voltage, in V, at least 10 V and at most 1000 V. Without it: it is that of the full pack. */
      readonly voltage?: Measured<'voltage'> | undefined
      /** What the insulation is. */
      readonly insulation: 'basic' | 'reinforced'
      /** Impulse voltage that it must withstand, in V, above 0 V and at most 12000 V, usually 330 V to 8 kV. */
      readonly impulse?: Measured<'voltage'> | undefined
      /** The mains that it hangs on. */
      readonly mains?: {
        /** Voltage to earth, in V, above 0 V and at most 1000 V, usually 100 V to 400 V. */
        readonly toEarth: Measured<'voltage'>
        /** Overvoltage category: II at a socket, III in the fixed wiring. */
        readonly category: 'I' | 'II' | 'III' | 'IV'
      } | undefined
      /** Degree of pollution: 1 sealed, 2 dry dust, 3 damp, a whole number, at least 1 and at most 3. */
      readonly pollution?: number | undefined
      /** Group of the material. */
      readonly material?: 'I' | 'II' | 'IIIa' | 'IIIb' | undefined
      /** Comparative tracking index of the material, in its place, a whole number, at least 100 and at most 1000. */
      readonly trackingIndex?: number | undefined
      /** Whether it is a printed board. */
      readonly printed?: boolean | undefined
      /** Distance through the air, as measured, in m, at least 0 m, usually 0.1 mm to 100 mm. */
      readonly clearance?: Measured<'length'> | undefined
      /** Distance along the surface, as measured, in m, at least 0 m, usually 0.1 mm to 200 mm. */
      readonly creepage?: Measured<'length'> | undefined
    } } | undefined
  } | undefined
  /** The main contactors between the pack and the controller. */
  readonly contactors?: {
    /** Contactors to choose from. */
    readonly candidates: readonly {
      /** What it is called. */
      readonly name?: string | undefined
      /** Current that it carries all day, in A, above 0 A, usually 5 A to 1000 A. */
      readonly carry: Measured<'current'>
      /** Greatest temperature of the air around it at which it carries that, in °C, usually 25 °C to 125 °C. */
      readonly ambient?: Measured<'temperature'> | undefined
      /** Time constant with which it warms, in s, above 0 s, usually 10 s to 1 h. */
      readonly thermalTimeConstant?: Measured<'time'> | undefined
      /** Its utilisation category, IEC 60947-4-1. */
      readonly category?: 'DC-1' | 'DC-3' | 'DC-5' | undefined
      /** What that category holds for. */
      readonly operational?: {
        /** Rated operational voltage, in V, above 0 V. */
        readonly voltage: Measured<'voltage'>
        /** Rated operational current, in A, above 0 A. */
        readonly current: Measured<'current'>
      } | undefined
      /** Greatest current that it makes, in A, above 0 A, usually 5 A to 5000 A. */
      readonly make?: Measured<'current'> | undefined
      /** What it breaks. */
      readonly breaks?: readonly {
        /** Up to what direct voltage, in V, above 0 V, usually 12 V to 1500 V. */
        readonly voltage: Measured<'voltage'>
        /** Greatest current, in A, above 0 A, usually 1 A to 5000 A. */
        readonly current: Measured<'current'>
        /** How often in its life, a whole number, at least 1. */
        readonly times: number
      }[] | undefined
      /** Whether it breaks currents of one direction only. */
      readonly polarised?: boolean | undefined
      /** What a polarised one breaks of currents the other way. */
      readonly breaksBackwards?: readonly {
        /** Up to what direct voltage, in V, above 0 V, usually 12 V to 1500 V. */
        readonly voltage: Measured<'voltage'>
        /** Greatest current, in A, above 0 A, usually 1 A to 5000 A. */
        readonly current: Measured<'current'>
        /** How often in its life, a whole number, at least 1. */
        readonly times: number
      }[] | undefined
      /** What it carries for a short time, the currents rising. */
      readonly shortTime?: readonly (readonly [Measured<'current'>, Measured<'time'>])[] | undefined
      /** Greatest peak of a fault that it withstands closed, in A, above 0 A, usually 0.5 kA to 100 kA. */
      readonly peak?: Measured<'current'> | undefined
    }[]
    /** How often it opens under full load in its life, a whole number, at least 1 and at most 1000000. */
    readonly openings?: number | undefined
    /** Temperature of the air around it, in °C, above -90 °C and below 200 °C, usually 20 °C to 85 °C. */
    readonly ambient?: Measured<'temperature'> | undefined
    /** When its control opens it on an overcurrent. */
    readonly trip?: {
      /** From what current, in A, above 0 A. */
      readonly current: Measured<'current'>
      /** After how long, in s, at least 0 s, usually 1 ms to 60 s. */
      readonly time: Measured<'time'>
    } | undefined
    /** Greatest peak that the fuse of their run lets through, in A, above 0 A, usually 0.2 kA to 50 kA. */
    readonly cutOff?: Measured<'current'> | undefined
  } | undefined
  /** What switches the traction voltage off, and what is left. */
  readonly shutdown?: {
    /** The main contactors. */
    readonly contactors: {
      /** The poles of the pack that have one. */
      readonly poles: 'both' | 'one'
      /** What they do when their coils lose the supply. */
      readonly unsupplied?: 'open' | 'stay as they are' | undefined
      /** Whether the control measures the voltage behind each before it closes. */
      readonly voltageBehind?: boolean | undefined
    }
    /** Switching off with the key. */
    readonly key?: {
      /** Whether the control brings the current to zero before the contactors open. */
      readonly currentFirst?: boolean | undefined
    } | undefined
    /** The loop through every plug and cover that opens the contactors. */
    readonly interlock?: {
      /** Time from a plug that is pulled until the contactors are open, in s, at least 0 s, usually 1 ms to 5 s. */
      readonly time: Measured<'time'>
    } | undefined
    /** Whether no live part can be touched when a plug or cover is open: IPXXB. */
    readonly fingerProof?: boolean | undefined
    /** The switch that opens the contactors in a crash. */
    readonly inertiaSwitch?: {
      /** Time from the crash until the contactors are open, in s, at least 0 s, usually 1 ms to 5 s. */
      readonly time: Measured<'time'>
    } | undefined
    /**
     * The plug that splits the pack while it is worked on. Without it: no plug splits the pack: all of its voltage is
     * left while it is worked on.
     */
    readonly servicePlug?: {
      /** Share of the modules in series on one side of it, a plain number, at least 0 and at most 1. */
      readonly share: Measured<'ratio'>
      /** Whether a contact of the interlock in it opens before its main contacts. */
      readonly leading?: boolean | undefined
    } | undefined
  } | undefined
  /** The charger, the supply that feeds it, and the charge. */
  readonly charger?: {
    /** Voltage of one phase to neutral, in V, above 0 V, usually 100 V to 250 V. */
    readonly voltage: Measured<'voltage'>
    /** Current in each phase that may be drawn all day, in A, above 0 A, usually 6 A to 63 A. */
    readonly current: Measured<'current'>
    /** How many phases, a whole number, at least 1 and at most 3. */
    readonly phases: number
    /** Rated current of the circuit that feeds it, in A, above 0 A, usually 6 A to 125 A. */
    readonly circuit?: Measured<'current'> | undefined
    /** By which rule a charge may load it for hours. */
    readonly rule?: 'NEC' | 'IEC own circuit' | 'domestic socket' | undefined
    /** Power factor of the charger, a plain number, above 0 and at most 1, usually 0.5 to 1. */
    readonly powerFactor?: Measured<'ratio'> | undefined
    /** Greatest power into the pack, in kW, above 0 kW, usually 1.5 kW to 11 kW. */
    readonly power: Measured<'power'>
    /** Efficiency from the supply to the pack, a plain number, above 0 and at most 1, usually 0.85 to 0.95. */
    readonly efficiency: Measured<'ratio'>
    /**
     * Temperature of the cells, in °C. Without it: the temperature of the cells is not held to limits: give temperature
     * and module.temperatures.
     */
    readonly temperature?: Measured<'temperature'> | undefined
    /** State of charge at the start, a plain number, at least 0 and at most 1. */
    readonly from: Measured<'ratio'>
    /** State of charge at the end, a plain number, at least 0 and at most 1. */
    readonly to: Measured<'ratio'>
  } | undefined
  /** The point at which it charges: the feed of the supply that charger tells of. */
  readonly chargingPoint?: {
    /** One-way length of the cable from the board, in m, at least 0 m, usually 0 m to 100 m. */
    readonly length: Measured<'length'>
    /** The section, where it lies already and is only to be examined. Without it: the section is chosen. */
    readonly section?: string | undefined
    /** How the cable lies. */
    readonly laid?: 'insulated wall' | 'conduit' | 'clipped' | 'NEC raceway' | undefined
    /** Temperature of the air around the cable, in °C, at least -20 °C and below 60 °C, usually 10 °C to 50 °C. */
    readonly ambient?: Measured<'temperature'> | undefined
    /** Share of its ampacity that a bundle leaves the cable, a plain number, above 0 and at most 1. */
    readonly bundled?: Measured<'ratio'> | undefined
    /** What opens on an overload. */
    readonly overcurrent?: 'breaker' | 'fuse' | undefined
    /** Greatest drop, as a share of the voltage, a plain number, above 0 and at most 0.2, usually 0.5 % to 5 %. */
    readonly maximumDrop?: Measured<'ratio'> | undefined
    /** The residual-current device before the point, or in it. */
    readonly residualCurrent?: {
      /** Its type. */
      readonly type?: 'AC' | 'A' | 'F' | 'B' | undefined
      /** Its rated residual current, in A, above 0 A, usually 6 mA to 500 mA. */
      readonly trips?: Measured<'current'> | undefined
      /** What opens on smooth direct current beside it, in the point or in the box of the cable. */
      readonly detector?: '6 mA' | 'none' | undefined
      /** Type of another device before it, on which other circuits rely too. */
      readonly upstream?: 'none' | 'AC' | 'A' | 'F' | 'B' | undefined
    } | undefined
    /** The earth of the point. */
    readonly earth?: {
      /** How the supply is earthed. */
      readonly system: 'TN-S' | 'TN-C-S' | 'TT'
      /** Resistance of the earth electrode of the house, as measured, in mΩ, above 0 mΩ, usually 1 Ω to 2 kΩ. */
      readonly resistance?: Measured<'resistance'> | undefined
      /** What is done about a broken neutral of the supply, where it is the earth too. */
      readonly openNeutral?: 'detected' | 'allowed by local code' | undefined
    } | undefined
    /**
     * Duty of the control pilot of the point, a plain number, at least 0 and at most 1. Without it: what the control
     * pilot announces is not held to what the circuit gives: give pilot.
     */
    readonly pilot?: Measured<'ratio'> | undefined
  } | undefined
  /** The 12 V side. */
  readonly lowVoltage?: {
    /** The loads, by their names. */
    readonly loads: { readonly [name: string]: {
      /** Power that it takes, in kW, above 0 kW, usually 1 W to 1 kW. */
      readonly power?: Measured<'power'> | undefined
      /** Current that it takes, in A, above 0 A, usually 0.1 A to 80 A. */
      readonly current?: Measured<'current'> | undefined
      /**
       * How long it is on: for a whole drive, for moments that the battery bridges, or by turns for a share of the
       * time.
       */
      readonly duty: 'steady' | 'short' | Measured<'ratio'>
      /** Its wire. */
      readonly feed?: {
        /** Length of the wire from the fuse to the load, in m, at least 0 m, usually 0 m to 8 m. */
        readonly length: Measured<'length'>
        /** The section, where it lies already and is only to be examined. Without it: the section is chosen. */
        readonly section?: string | undefined
        /**
         * Rating of its fuse, where one is fitted already, in A, above 0 A, usually 1 A to 500 A. Without it: the fuse
         * is the least that the load needs.
         */
        readonly fuse?: Measured<'current'> | undefined
        /** How the current comes back: by a wire it loses voltage out and back. */
        readonly back: 'wire' | 'body'
        /** What it feeds, which tells what it may lose. */
        readonly feeds?: 'lamp up to 15 W' | 'lamp above 15 W' | 'headlamp' | 'charging line' | 'starter' | 'control line' | undefined
        /** Greatest drop, in V, above 0 V, usually 0.05 V to 1 V. */
        readonly maximumDrop?: Measured<'voltage'> | undefined
      } | undefined
    } }
    /** Voltage with the converter on, in V, above 0 V, usually 12.5 V to 15 V. */
    readonly voltage?: Measured<'voltage'> | undefined
    /** The converter from the pack. */
    readonly converter?: {
      /** Its rated current on the 12 V side, in A, above 0 A, usually 10 A to 250 A. */
      readonly current: Measured<'current'>
      /** Its efficiency, a plain number, above 0 and at most 1, usually 0.8 to 0.97. */
      readonly efficiency?: Measured<'ratio'> | undefined
      /**
       * Its wire to the battery. Without it: the wire between converter and battery is not judged: give converter.feed.
       */
      readonly feed?: {
        /** Length of the wire from the fuse to the load, in m, at least 0 m, usually 0 m to 8 m. */
        readonly length: Measured<'length'>
        /** The section, where it lies already and is only to be examined. Without it: the section is chosen. */
        readonly section?: string | undefined
        /**
         * Rating of its fuse, where one is fitted already, in A, above 0 A, usually 1 A to 500 A. Without it: the fuse
         * is the least that the load needs.
         */
        readonly fuse?: Measured<'current'> | undefined
        /** How the current comes back: by a wire it loses voltage out and back. */
        readonly back: 'wire' | 'body'
        /** What it feeds, which tells what it may lose. */
        readonly feeds?: 'lamp up to 15 W' | 'lamp above 15 W' | 'headlamp' | 'charging line' | 'starter' | 'control line' | undefined
        /** Greatest drop, in V, above 0 V, usually 0.05 V to 1 V. */
        readonly maximumDrop?: Measured<'voltage'> | undefined
      } | undefined
    } | undefined
    /** The 12 V battery. */
    readonly battery?: {
      /** Capacity that is taken in 20 h, in Ah, above 0 Ah, usually 5 Ah to 120 Ah. */
      readonly capacity: Measured<'charge'>
      /** Share of it that may be taken, a plain number, above 0 and at most 1. */
      readonly usable?: Measured<'ratio'> | undefined
      /** Exponent of Peukert, a plain number, at least 1 and at most 1.6. */
      readonly exponent?: Measured<'ratio'> | undefined
      /**
       * How long it must last with the converter off, in s, above 0 s, usually 5 min to 4 h. Without it: how long the
       * battery lasts without the converter is not held to a limit: give battery.lasts.
       */
      readonly lasts?: Measured<'time'> | undefined
    } | undefined
    /**
     * Temperature of the air around the wires, in °C, at least -23.15 °C and below 226.85 °C, usually -20 °C to 125 °C.
     */
    readonly ambient?: Measured<'temperature'> | undefined
    /** Continuous limit of the insulation, in °C, usually 60 °C to 250 °C. */
    readonly insulationLimit?: Measured<'temperature'> | undefined
    /** Share of its ampacity that a bundle leaves a wire, a plain number, above 0 and at most 1. */
    readonly bundled?: Measured<'ratio'> | undefined
  } | undefined
  /** The seasons in which the car is driven. */
  readonly seasons?: { readonly [name: string]: {
    /** Title, for people to read; its key is its name in ids. */
    readonly title?: string | undefined
    /** Temperature of the air, in °C, usually -40 °C to 50 °C. */
    readonly outside: Measured<'temperature'>
    /** Usable share of the energy of the pack, a plain number, above 0 and at most 1. Without it: it is pack.usable. */
    readonly usable?: Measured<'ratio'> | undefined
    /**
     * Temperature of the cells at the start of a drive, in °C, usually -30 °C to 50 °C. Without it: the cells are as
     * warm as heating.pack makes them, or else as the air.
     */
    readonly cells?: Measured<'temperature'> | undefined
    /** The night before. */
    readonly night?: {
      /** Temperature of the pack in the evening, in °C, usually -30 °C to 50 °C. */
      readonly from: Measured<'temperature'>
      /** Time from the evening to the morning, in s, above 0 s, usually 1 h to 72 h. */
      readonly time: Measured<'time'>
    } | undefined
  } } | undefined
  /** The journeys that the car must make. */
  readonly journeys?: { readonly [name: string]: {
    /** Title, for people to read; its key is its name in ids. */
    readonly title?: string | undefined
    /** The stretches of a journey, one after the other. Without it: give one of stretches and cycle. */
    readonly stretches?: readonly {
      /** What the stretch is called. */
      readonly name?: string | undefined
      /** Length of the stretch, in m, at least 0.001 m and at most 2000000 m. */
      readonly distance: Measured<'length'>
      /** Speed on the stretch, in km/h, above 0 km/h, usually 0 km/h to 140 km/h. */
      readonly speed: Measured<'speed'>
      /** Grade, rise over run, a plain number, usually -0.2 to 0.2. */
      readonly grade?: Measured<'ratio'> | undefined
      /** How often the car comes to a stand, the last time at its end, a whole number, at least 1 and at most 1000. */
      readonly stops?: number | undefined
      /** Time at a stand, each time, in s, at least 0 s, usually 0 s to 2 h. */
      readonly standing?: Measured<'time'> | undefined
      /** Temperature of the air, in °C, above -273.15 °C, usually -20 °C to 40 °C. */
      readonly temperature?: Measured<'temperature'> | undefined
      /** Altitude of the road above sea level, in m, at least -2000 m and at most 11000 m, usually 0 m to 2500 m. */
      readonly altitude?: Measured<'length'> | undefined
      /** Head wind, negative for a tail wind, in km/h. */
      readonly headwind?: Measured<'speed'> | undefined
      /** Power of all that is on, the heater too, in kW, at least 0 kW. */
      readonly auxiliaries?: Measured<'power'> | undefined
    }[] | undefined
    /** How briskly the car speeds up and slows down. */
    readonly pace?: {
      /**
       * Acceleration while it speeds up, in m/s², at least 0.01 m/s² and at most 30 m/s², usually 0.01 m/s² to 4.9
       * m/s².
       */
      readonly acceleration?: Measured<'acceleration'> | undefined
      /**
       * Deceleration while it slows down, as a positive figure, in m/s², at least 0.01 m/s² and at most 30 m/s²,
       * usually 0.01 m/s² to 8.8 m/s².
       */
      readonly braking?: Measured<'acceleration'> | undefined
    } | undefined
    /** The published cycle that it is, in place of stretches. Without it: give one of stretches and cycle. */
    readonly cycle?: 'ECE-15' | 'EUDC' | 'NEDC' | 'Japan 10-mode' | 'UDDS' | 'HWFET' | 'US06' | 'WLTC class 1' | 'WLTC class 2' | 'WLTC class 3b' | undefined
  } } | undefined
  /** The longest hill that the car must climb. */
  readonly hill?: {
    /** Grade, rise over run, a plain number, above 0 and at most 1, usually 0.5 % to 40 %. */
    readonly grade: Measured<'ratio'>
    /** Length of the road, in m, above 0 m, usually 50 m to 50 km. */
    readonly length: Measured<'length'>
    /** Speed on the hill, in km/h, above 0 km/h, usually 3 km/h to 140 km/h. */
    readonly speed: Measured<'speed'>
  } | undefined
  /** The coolant loop of motor and controller, and how the pack is cooled. */
  readonly cooling?: {
    /** Coolant, glycol by volume. */
    readonly coolant: 'water' | 'ethylene glycol 30 %' | 'ethylene glycol 40 %' | 'ethylene glycol 50 %' | 'propylene glycol 30 %' | 'propylene glycol 40 %' | 'propylene glycol 50 %'
    /** The curve of the pump, from no flow on. */
    readonly pump: readonly (readonly [Measured<'volumeFlow'>, Measured<'pressure'>])[]
    /** What the coolant passes, from the outlet of the radiator on. */
    readonly segments: readonly {
      /** What it is called. */
      readonly name?: string | undefined
      /** Length of the pipe, in m, above 0 m, usually 20 mm to 50 m. */
      readonly length?: Measured<'length'> | undefined
      /** Bore of the pipe, in m, above 0 m, usually 2 mm to 80 mm. */
      readonly bore?: Measured<'length'> | undefined
      /** Height of the roughness of the wall, in m, at least 0 m. */
      readonly roughness?: Measured<'length'> | undefined
      /** Sum of the loss coefficients of the fittings, a plain number, at least 0. */
      readonly fittings?: Measured<'ratio'> | undefined
      /** Pressure drop that the part's maker gives, in kPa, above 0 kPa, usually 0.1 kPa to 200 kPa. */
      readonly drop?: Measured<'pressure'> | undefined
      /** Flow for which the drop is given, in L/min, above 0 L/min, usually 0.3 L/min to 100 L/min. */
      readonly at?: Measured<'volumeFlow'> | undefined
      /**
       * Hydraulic diameter of the passages of a part, which tells whether its flow is turbulent, in m, above 0 m,
       * usually 0.3 mm to 40 mm.
       */
      readonly hydraulicDiameter?: Measured<'length'> | undefined
      /**
       * Area of those passages together; one round passage unless given, in m², above 0 m², usually 5 mm² to 5000 mm².
       */
      readonly flowArea?: Measured<'area'> | undefined
      /** Heat put into the coolant here, in kW, at least 0 kW. */
      readonly heat?: Measured<'power'> | undefined
      /**
       * Most that the coolant may have as it enters, in °C. Without it: the coolant that enters it is held to the limit
       * of the loop alone.
       */
      readonly inletLimit?: Measured<'temperature'> | undefined
      /** Least flow that it needs, in L/min, above 0 L/min. Without it: the flow through it is not held to a limit. */
      readonly minimumFlow?: Measured<'volumeFlow'> | undefined
      /** Branches side by side, each a list of pipes and parts. */
      readonly parallel?: readonly (readonly {
        /** What it is called. */
        readonly name?: string | undefined
        /** Length of the pipe, in m, above 0 m, usually 20 mm to 50 m. */
        readonly length?: Measured<'length'> | undefined
        /** Bore of the pipe, in m, above 0 m, usually 2 mm to 80 mm. */
        readonly bore?: Measured<'length'> | undefined
        /** Height of the roughness of the wall, in m, at least 0 m. */
        readonly roughness?: Measured<'length'> | undefined
        /** Sum of the loss coefficients of the fittings, a plain number, at least 0. */
        readonly fittings?: Measured<'ratio'> | undefined
        /** Pressure drop that the part's maker gives, in kPa, above 0 kPa, usually 0.1 kPa to 200 kPa. */
        readonly drop?: Measured<'pressure'> | undefined
        /** Flow for which the drop is given, in L/min, above 0 L/min, usually 0.3 L/min to 100 L/min. */
        readonly at?: Measured<'volumeFlow'> | undefined
        /**
         * Hydraulic diameter of the passages of a part, which tells whether its flow is turbulent, in m, above 0 m,
         * usually 0.3 mm to 40 mm.
         */
        readonly hydraulicDiameter?: Measured<'length'> | undefined
        /**
         * Area of those passages together; one round passage unless given, in m², above 0 m², usually 5 mm² to 5000
         * mm².
         */
        readonly flowArea?: Measured<'area'> | undefined
        /** Heat put into the coolant here, in kW, at least 0 kW. */
        readonly heat?: Measured<'power'> | undefined
        /**
         * Most that the coolant may have as it enters, in °C. Without it: the coolant that enters it is held to the
         * limit of the loop alone.
         */
        readonly inletLimit?: Measured<'temperature'> | undefined
        /**
         * Least flow that it needs, in L/min, above 0 L/min. Without it: the flow through it is not held to a limit.
         */
        readonly minimumFlow?: Measured<'volumeFlow'> | undefined
      }[])[] | undefined
    }[]
    /** The radiator, by its effectiveness, its conductance, or the conductances of its two sides. */
    readonly radiator: {
      /** Effectiveness, the same at every flow, a plain number, above 0 and at most 1. */
      readonly effectiveness?: Measured<'ratio'> | undefined
      /** Conductance from coolant to air, in W/K, above 0 W/K, usually 5 W/K to 2000 W/K. */
      readonly conductance?: Measured<'thermalConductance'> | undefined
      /** The flows for which the conductance is given. */
      readonly at?: {
        /** Air flow for which it is given, in L/min, above 0 L/min, usually 50 m³/h to 10000 m³/h. */
        readonly air: Measured<'volumeFlow'>
        /** Coolant flow for which it is given, in L/min, above 0 L/min, usually 0.5 L/min to 200 L/min. */
        readonly coolant: Measured<'volumeFlow'>
      } | undefined
      /** How the conductance grows with the flows. */
      readonly exponents?: {
        /** Exponent of the air flow, a plain number, at least 0 and at most 1. */
        readonly air: Measured<'ratio'>
        /** Exponent of the coolant flow, a plain number, at least 0 and at most 1. */
        readonly coolant: Measured<'ratio'>
      } | undefined
      /** The conductance of one side. */
      readonly airSide?: {
        /** Conductance of this side, in W/K, above 0 W/K. */
        readonly conductance: Measured<'thermalConductance'>
        /** Flow for which it is given, in L/min, above 0 L/min. */
        readonly at: Measured<'volumeFlow'>
        /** Exponent of the flow, a plain number, at least 0 and at most 1. */
        readonly exponent: Measured<'ratio'>
      } | undefined
      /** The conductance of one side. */
      readonly coolantSide?: {
        /** Conductance of this side, in W/K, above 0 W/K. */
        readonly conductance: Measured<'thermalConductance'>
        /** Flow for which it is given, in L/min, above 0 L/min. */
        readonly at: Measured<'volumeFlow'>
        /** Exponent of the flow, a plain number, at least 0 and at most 1. */
        readonly exponent: Measured<'ratio'>
      } | undefined
    }
    /** Air flow through the radiator on the hill, in L/min, above 0 L/min, usually 50 m³/h to 10000 m³/h. */
    readonly airFlow: Measured<'volumeFlow'>
    /** Most that the coolant may have anywhere, in °C. */
    readonly limit?: Measured<'temperature'> | undefined
    /**
     * Least flow that the parts need, in L/min, above 0 L/min, usually 0.3 L/min to 100 L/min. Without it: the flow
     * round the loop is not held to a limit: give minimumFlow.
     */
    readonly minimumFlow?: Measured<'volumeFlow'> | undefined
    /** Cooling of the pack. */
    readonly pack: {
      /** Heat that the pack gives off per kelvin, in W/K, above 0 W/K, usually 0.5 W/K to 500 W/K. */
      readonly conductance: Measured<'thermalConductance'>
      /** Highest temperature allowed for the cells, in °C, usually 25 °C to 75 °C. */
      readonly limit: Measured<'temperature'>
      /** By how much the hottest point of the cells is hotter than the pack, while they make heat. */
      readonly hottest?: {
        /**
         * How long the heat of a cell stands in its core: its rise there over the rate at which it warms, in s, at
         * least 0 s, usually 0 s to 30 min.
         */
        readonly core?: Measured<'time'> | undefined
        /** By how much the warmest cell is warmer than the pack, in K, at least 0 K, usually 0 K to 20 K. */
        readonly spread?: Measured<'temperatureDifference'> | undefined
      } | undefined
    }
  } | undefined
  /** The heaters of cabin and pack. */
  readonly heating?: {
    /** The heater of the cabin. */
    readonly cabin?: {
      /** Flow of fresh air, as it is outside, in L/min, at least 0 L/min, usually 0 m³/h to 600 m³/h. */
      readonly airFlow: Measured<'volumeFlow'>
      /** Temperature inside, in °C, usually 15 °C to 28 °C. */
      readonly inside: Measured<'temperature'>
      /** Conductance of all walls, in W/K, at least 0 W/K, usually 0 W/K to 300 W/K. */
      readonly lossConductance: Measured<'thermalConductance'>
      /** Coefficient of performance of the heat pump, at this temperature outside, a plain number, at least 1. */
      readonly coefficientOfPerformance?: Measured<'ratio'> | undefined
    } | undefined
    /** The heater of the pack. */
    readonly pack?: {
      /** Power of the heater, in kW, above 0 kW, usually 50 W to 10 kW. */
      readonly heater: Measured<'power'>
      /** Temperature to which it warms the pack, in °C, usually -10 °C to 40 °C. */
      readonly to: Measured<'temperature'>
      /** Heat lost to the outside per kelvin, in W/K, above 0 W/K, usually 0.5 W/K to 100 W/K. */
      readonly conductance: Measured<'thermalConductance'>
    } | undefined
  } | undefined
  /** A house that the pack feeds for an evening. */
  readonly home?: {
    /** The mean load of each hour, one after the other and then from the first again. */
    readonly hourly: readonly Measured<'power'>[]
    /** The inverter. */
    readonly inverter: {
      /** Efficiency of the inverter, a plain number, above 0 and at most 1, usually 0.7 to 0.99. */
      readonly efficiency: Measured<'ratio'>
      /** Greatest power that it delivers, in kW, above 0 kW, usually 100 W to 30 kW. */
      readonly power: Measured<'power'>
      /** Power that the inverter needs without a load, in kW, at least 0 kW, usually 0 W to 300 W. */
      readonly standby?: Measured<'power'> | undefined
    }
    /** Energy kept back for the next drive, in kWh, at least 0 kWh. */
    readonly reserve: Measured<'energy'>
  } | undefined
  /** What the conversion must keep to. */
  readonly targets?: {
    /** How much the kerb mass may rise, in kg, at least 0 kg, usually 0 kg to 600 kg. */
    readonly kerbMassChange?: Measured<'mass'> | undefined
    /** Top speed on the level, at least, in km/h, above 0 km/h, usually 20 km/h to 250 km/h. */
    readonly topSpeed?: Measured<'speed'> | undefined
    /** Steepest grade for a start, rise over run, a plain number, above 0, usually 1 % to 50 %. */
    readonly startGrade?: Measured<'ratio'> | undefined
    /** Least energy of the pack, in kWh, above 0 kWh, usually 1 kWh to 150 kWh. */
    readonly energy?: Measured<'energy'> | undefined
    /**
     * Share of the mass on the front axle to aim for, a plain number, above 0 and below 1. Without it: it is the share
     * that the car has now.
     */
    readonly frontShare?: Measured<'ratio'> | undefined
    /** How far the share on the front axle may move, a plain number, above 0 and at most 1, usually 0.1 % to 20 %. */
    readonly frontShareChange?: Measured<'ratio'> | undefined
  } | undefined
  /** How uncertain values are, by their paths, in place of ± at the value. */
  readonly uncertain?: { readonly [name: string]: string } | undefined
}
