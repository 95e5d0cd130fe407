import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  aerodynamicDrag,
  airDensity,
  airPressure,
  baseSpeed,
  criticalSpeed,
  equivalentMass,
  gearStep,
  gradeability,
  gradeForce,
  gripAcceleration,
  gripGradeability,
  inertiaForce,
  motorEfficiency,
  motorLoss,
  motorSpeed,
  motorTorque,
  overallRatio,
  readTyre,
  roadLoad,
  roadLoadFromCoefficients,
  roadPower,
  roadSpeed,
  rollingResistance,
  shaftPower,
  tractionLimitFront,
  tractionLimitRear,
  tractiveForce,
  wheelTorque,
} from '../../src/drivetrain/index.js'
import { explain } from '../../src/formula/index.js'
import { longitudinalTransfer, rearAxleMass } from '../../src/mass/index.js'
import { quantity } from '../../src/quantity/index.js'
import { between } from '../between.js'

describe('the mark of a tyre', () => {
  it('gives the sizes of a radial tyre', () => {
    const tyre = readTyre('155/80 R13')
    expect(String(tyre.width)).toBe('155 mm')
    expect(String(tyre.aspect)).toBe('80 %')
    expect(String(tyre.rim)).toBe('13 in')
    expect(tyre.construction).toBe('radial')
    expect(tyre.sectionHeight.in('mm')).toBe(124)
    // 13 · 25.4 + 2 · 124, times 3.05, over 2π.
    expect(tyre.diameter.in('mm')).toBeCloseTo(578.2, 9)
    expect(tyre.rollingCircumference.in('mm')).toBeCloseTo(1763.51, 9)
    expect(tyre.rollingRadius.in('mm')).toBeCloseTo(280.671, 3)
    expect(tyre.assumptions).toEqual([])
  })
  it.each([
    '155/80R13',
    '155/80 r13',
    ' 155/80 R 13 ',
    '155 / 80 R13',
    '155/80\u00a0R13',
    '155/80SR13',
    '155/80 HR 13',
    '155/80 ZR13',
    'P155/80R13',
    '155/80 R13 79T',
    '155/80R13 79 T',
    '155/80 R13 (79Y)',
    '155/80 TR 13',
    '155/80 R13 79T XL',
    '155/80 R13 79T M+S',
    '155/80 R13 TL',
    '155/80 R13 C 85/83 Q',
  ])("is the same tyre as '%s'", (mark) => {
    expect(JSON.stringify(readTyre(mark))).toBe(JSON.stringify(readTyre('155/80 R13')))
  })
  it.each(['155/80-13', '155/80 - 13', '155/80–13', '155/80 D13'])(
    "of the bias tyre '%s' gives a shorter turn",
    (mark) => {
      const tyre = readTyre(mark)
      expect(tyre.construction).toBe('bias')
      expect(tyre.rollingCircumference.ratioTo(tyre.diameter)).toBeCloseTo(2.99, 12)
      expect(tyre.diameter.in('mm')).toBeCloseTo(578.2, 9)
    },
  )
  it('without an aspect says which was assumed', () => {
    const tyre = readTyre('165 SR13')
    expect(tyre.aspect.in('%')).toBe(80)
    expect(tyre.diameter.in('mm')).toBeCloseTo(594.2, 9)
    expect(tyre.assumptions).toEqual([
      "'165 SR13' has no aspect: 80 % is assumed. Some guides give 82 %, 6.6 mm more in diameter.",
    ])
  })
  it('takes a rim of 100 or more for millimetres', () => {
    expect(readTyre('190/65 R390').diameter.in('mm')).toBeCloseTo(390 + 2 * 0.65 * 190, 9)
  })
  it('shows in a working how the sizes follow', () => {
    const { steps } = explain(() => readTyre('155/80 R13'))
    expect(steps.map((step) => 'formula' in step && step.formula.name)).toEqual([
      'tyreDiameter',
      'rollingCircumference',
      'sectionHeight',
      'rollingRadius',
    ])
  })
  it.each([
    '',
    '155',
    '155/80',
    '155/80 13',
    '155/80 X13',
    '80/155 R13',
    '155/8 R13',
    '155/80 R1',
    '155/80 R99',
    '158/80 R13',
    '155/80 R13 and a spare',
    '155/80 R130',
  ])("that is wrong, '%s', is refused and the form is shown", (mark) => {
    expect(() => readTyre(mark)).toThrow(
      `readTyre: one input cannot be used\n  mark: expected a tyre mark such as '155/80 R13', '155/80-13' (cross-ply), '165 R13' (no aspect) or '5.60-13' (inches), got '${mark}'`,
    )
  })
  it('that is no text is refused', () => {
    expect(() => readTyre(155 as never)).toThrow(/mark: expected a tyre mark .*, got 155$/)
    expect(() => readTyre(undefined as never)).toThrow(/got undefined$/)
  })
  it('of the sixties without an aspect may be of a cross-ply or of a radial', () => {
    expect(readTyre('145-13').construction).toBe('bias')
    expect(readTyre('145-13').assumptions[0]).toMatch(
      /80 % is assumed.* a radial with such a mark rolls 2 % further\.$/,
    )
    expect(readTyre('155 SR 13').construction).toBe('radial')
  })
  it('in inches gives the height that such tyres mostly had, and says so', () => {
    const tyre = readTyre('5.60-13')
    expect(String(tyre.width)).toBe('5.6 in')
    expect(tyre.construction).toBe('bias')
    // 13 + 2 · 0.95 · 5.60 inches, times 2.99.
    expect(tyre.diameter.in('in')).toBeCloseTo(23.64, 12)
    expect(tyre.rollingCircumference.in('in')).toBeCloseTo(70.6836, 9)
    expect(tyre.assumptions).toEqual([
      "'5.60-13' has no aspect: 95 % is assumed, as cross-ply tyres of this width mostly had (common practice, no source). They differ by about 3 %, 8.5 mm in diameter: measure how far one rolls in one turn.",
    ])
  })
  it.each(['5.60 - 13', '5.60x13', '5.60 × 13', '5.60–13', '5.60 S 13', '5.60 S-13', '5.60-13 4PR', ' 5.60-13 TL'])(
    "in inches, '%s', is the same tyre as '5.60-13'",
    (mark) => {
      const { assumptions: _, ...tyre } = readTyre(mark)
      const { assumptions: __, ...same } = readTyre('5.60-13')
      expect(JSON.stringify(tyre)).toBe(JSON.stringify(same))
    },
  )
  it.each(['5.6-13', '5,20 - 10', '6.00 16', '5.50 R12', '5.60/80-13'])(
    "in inches that is no mark, '%s', is refused with what one looks like",
    (mark) => {
      expect(() => readTyre(mark)).toThrow(/or '5\.60-13' \(inches\), got/)
    },
  )
  it.each([
    ['5.55-13', 'on a rim of 13 a width of 4.80, 5.20, 5.50, 5.60,'],
    // Before the war as high as wide or higher, after it less.
    ['6.00-15', 'on a rim of 15 a width of 4.80, 5.20, 5.60,'],
    ['5.25-16', 'a rim of 10 to 15'],
  ])("in inches of which the height is not known, '%s', is refused with what to measure", (mark, known) => {
    const said = `mark: expected a mark in inches of which the height is known: ${known}`
    expect(() => readTyre(mark)).toThrow(said)
    expect(() => readTyre(mark)).toThrow(/measure how far the tyre rolls in one turn: give it as rollingCircumference/)
  })
})

describe('gears', () => {
  const gearing = [between(0.5, 20), between(0.2, 0.4)] as const
  it('turn a road speed into a motor speed and back', () => {
    fc.assert(
      fc.property(between(0, 60), ...gearing, (v, ratio, r) => {
        const speed = quantity('speed', v, 'm/s')
        const rollingRadius = quantity('length', r, 'm')
        const back = roadSpeed({ motorSpeed: motorSpeed({ speed, ratio, rollingRadius }), ratio, rollingRadius })
        expect(back.in('m/s')).toBeCloseTo(v, 10)
      }),
    )
  })
  it('lose no power where they are perfect', () => {
    fc.assert(
      fc.property(between(0, 60), ...gearing, between(0, 400), (v, ratio, r, torque) => {
        const speed = quantity('speed', v, 'm/s')
        const radius = quantity('length', r, 'm')
        const onWheels = wheelTorque({ motorTorque: quantity('torque', torque, 'N·m'), ratio, efficiency: 1 })
        const force = tractiveForce({ wheelTorque: onWheels, radius })
        const shaft = torque * motorSpeed({ speed, ratio, rollingRadius: radius }).in('rad/s')
        expect(roadPower({ force, speed }).in('W')).toBeCloseTo(shaft, 6)
      }),
    )
  })
  it('step down the motor by the ratio of two overall ratios, whatever the final drive', () => {
    fc.assert(
      fc.property(between(1, 5), between(0.7, 4), between(2, 6), (gear, next, finalDrive) => {
        const shift = gearStep({ ratio: gear, nextRatio: next }).si
        const overall = gearStep({
          ratio: overallRatio({ gearRatio: gear, finalDrive }),
          nextRatio: overallRatio({ gearRatio: next, finalDrive }),
        }).si
        expect(overall / shift).toBeCloseTo(1, 12)
      }),
    )
  })
  it('make the rotating energy of a part that of its equivalent mass', () => {
    fc.assert(
      fc.property(between(0.1, 60), ...gearing, between(0.001, 2), (v, ratio, r, inertia) => {
        const rollingRadius = quantity('length', r, 'm')
        const mass = equivalentMass({ inertia: quantity('inertia', inertia, 'kg·m²'), ratio, radius: rollingRadius })
        const turns = motorSpeed({ speed: quantity('speed', v, 'm/s'), ratio, rollingRadius }).in('rad/s')
        const [asMass, asRotor] = [(mass.in('kg') * v ** 2) / 2, (inertia * turns ** 2) / 2]
        expect(Math.abs(asMass - asRotor)).toBeLessThanOrEqual(1e-12 * asRotor)
      }),
    )
  })
  it('lose in both directions: what brakes the wheels is more than the motor takes up', () => {
    fc.assert(
      fc.property(between(-400, 400), ...gearing, between(0.5, 1), (torque, ratio, r, efficiency) => {
        const onWheels = wheelTorque({ motorTorque: quantity('torque', torque, 'N·m'), ratio, efficiency })
        const lost = torque - onWheels.in('N·m') / ratio
        expect(lost).toBeGreaterThanOrEqual(-1e-12 * Math.abs(torque))
        const rollingRadius = quantity('length', r, 'm')
        const force = tractiveForce({ wheelTorque: onWheels, radius: rollingRadius })
        expect(motorTorque({ force, ratio, rollingRadius, efficiency }).in('N·m')).toBeCloseTo(torque, 9)
      }),
    )
  })
  it('refuse an efficiency above one', () => {
    expect(() => wheelTorque({ motorTorque: '40 N·m', ratio: 8, efficiency: 1.2 })).toThrow(
      'wheelTorque: one input cannot be used\n  efficiency: expected a ratio above 0 and at most 1, got 1.2',
    )
  })
})

describe('air', () => {
  it('of the standard atmosphere gets thinner with height', () => {
    const at = (altitude: '0 m' | '2 km') => airPressure({ altitude })
    // Standard temperature at 2 km is 13 K lower. ISO 2533 has 1.0066 kg/m³ there, from memory.
    expect(airDensity({ pressure: at('2 km'), temperature: '2 °C' }).in('kg/m³')).toBeCloseTo(1.0066, 3)
    expect(at('0 m').in('kPa')).toBe(101.325)
  })
  it('obeys the hydrostatic law: a thin layer weighs what the pressure falls by', () => {
    fc.assert(
      fc.property(between(-1900, 10900), (height) => {
        const pressure = (altitude: number) => airPressure({ altitude: quantity('length', altitude, 'm') })
        const temperature = quantity('temperature', 288.15 - 0.0065 * height, 'K')
        const weight = airDensity({ pressure: pressure(height), temperature }).in('kg/m³') * 9.80665 * 2
        const fall = pressure(height - 1).in('Pa') - pressure(height + 1).in('Pa')
        expect(fall / weight).toBeCloseTo(1, 6)
      }),
    )
  })
  it('is refused above the layer for which the law is given', () => {
    expect(() => airPressure({ altitude: '12 km' })).toThrow(
      "altitude: expected a length at least -2000 m and at most 11000 m, got '12 km' (Altitude above sea level in the lowest layer of ISO 2533)",
    )
  })
  it('in a head wind is that of the sum of the speeds', () => {
    const air = { airDensity: '1.2 kg/m³', dragArea: '0.6 m²' } as const
    expect(aerodynamicDrag({ ...air, speed: '60 km/h', headwind: '20 km/h' }).in('N')).toBeCloseTo(
      aerodynamicDrag({ ...air, speed: '80 km/h' }).in('N'),
      9,
    )
  })
  it('in a tail wind faster than the car pushes as hard as it would resist', () => {
    const air = { airDensity: '1.2 kg/m³', dragArea: '0.6 m²' } as const
    const pushed = aerodynamicDrag({ ...air, speed: '10 km/h', headwind: '-40 km/h' })
    expect(pushed.in('N')).toBeCloseTo(-aerodynamicDrag({ ...air, speed: '30 km/h' }).in('N'), 9)
  })
})

describe('road load', () => {
  it('of a slope is the weight, split along and across the road', () => {
    fc.assert(
      fc.property(between(100, 3000), between(-1, 1), (m, grade) => {
        const mass = quantity('mass', m, 'kg')
        const along = gradeForce({ mass, grade }).in('N')
        const across = rollingResistance({ mass, coefficient: 1, grade }).in('N')
        expect(Math.hypot(along, across) / (m * 9.80665)).toBeCloseTo(1, 12)
        expect(along / across).toBeCloseTo(grade, 12)
      }),
    )
  })
  it('of a 20 % grade is that of 11.31°, and of 100 % that of 45°', () => {
    expect(gradeForce({ mass: '1000 kg', grade: '20%' }).in('kgf')).toBeCloseTo(196.1, 1)
    expect(gradeForce({ mass: '1000 kg', grade: '100%' }).in('kgf')).toBeCloseTo(707.1, 1)
  })
  it('from coefficients is that of its parts on the level', () => {
    fc.assert(
      fc.property(
        between(300, 2000),
        between(0.005, 0.02),
        between(0.3, 1),
        between(0, 50),
        (m, coefficient, area, v) => {
          const mass = quantity('mass', m, 'kg')
          const speed = quantity('speed', v, 'm/s')
          const dragArea = quantity('area', area, 'm²')
          const parts = roadLoad({
            aerodynamicDrag: aerodynamicDrag({ airDensity: '1.2 kg/m³', dragArea, speed }),
            rollingResistance: rollingResistance({ mass, coefficient }),
          })
          const whole = roadLoadFromCoefficients({
            constant: quantity('force', m * 9.80665 * coefficient, 'N'),
            linear: '0 N/(m/s)',
            quadratic: quantity('forcePerSpeedSquared', 0.6 * area, 'N/(m/s)²'),
            speed,
          })
          expect(whole.ratioTo(parts)).toBeCloseTo(1, 12)
        },
      ),
    )
  })
  it('takes the quadratic coefficient in any of its units', () => {
    const rest = { constant: '0 N', linear: '0 N/(m/s)', speed: '72 km/h' } as const
    // 1 lbf/mph² = 4.4482216 N / (0.44704 m/s)² = 22.258 N/(m/s)².
    const perMiles = roadLoadFromCoefficients({ ...rest, quadratic: '0.01 lbf/mph²' })
    expect(perMiles.in('N')).toBeCloseTo(0.22258 * 20 ** 2, 2)
    expect(roadLoadFromCoefficients({ ...rest, quadratic: '0.03 N/(km/h)²' }).in('N')).toBeCloseTo(0.03 * 72 ** 2, 9)
  })
  it('coasting down by the integral of inertia over force takes the published time', () => {
    // 40 CFR 86.529-98, figure F98-9, read: from 70 to 60 km/h in 2.95, 4.85 and 6.18 s.
    const published = [
      [100, '0 N', '0.0224 N/(km/h)²', 2.95],
      [200, '8.69 N', '0.0252 N/(km/h)²', 4.85],
      [300, '17.43 N', '0.0279 N/(km/h)²', 6.18],
    ] as const
    for (const [mass, constant, quadratic, expected] of published) {
      const steps = 1000
      const width = 10 / 3.6 / steps
      let time = 0
      for (let n = 0; n < steps; n++) {
        const speed = quantity('speed', 60 / 3.6 + (n + 0.5) * width, 'm/s')
        const force = roadLoadFromCoefficients({ constant, linear: '0 N/(m/s)', quadratic, speed })
        time += (mass * width) / force.in('N')
      }
      expect(Math.abs(time - expected)).toBeLessThanOrEqual(0.01)
    }
  })
  it('counts turning parts for acceleration only', () => {
    const force = inertiaForce({ mass: '800 kg', acceleration: '1 m/s²', rotatingFactor: 1.05 })
    expect(force.in('N')).toBeCloseTo(840, 9)
    expect(() => inertiaForce({ mass: '800 kg', acceleration: '1 m/s²', rotatingFactor: 0.95 })).toThrow(
      /rotatingFactor: expected a ratio at least 1, got 0\.95/,
    )
  })
  it('names a grade that was given as an angle', () => {
    expect(() => gradeForce({ mass: '800 kg', grade: '8 °' as never })).toThrow(
      /grade: expected a ratio such as '0\.95', got '8 °' \(° measures an angle\)/,
    )
  })
})

describe('motor', () => {
  it('gives its peak power at its base speed', () => {
    fc.assert(
      fc.property(between(1, 500), between(10, 1000), (kilowatts, newtonMetres) => {
        const [power, torque] = [quantity('power', kilowatts, 'kW'), quantity('torque', newtonMetres, 'N·m')]
        expect(shaftPower({ torque, speed: baseSpeed({ power, torque }) }).ratioTo(power)).toBeCloseTo(1, 12)
      }),
    )
  })
  const coefficients = {
    copper: '0.3 W/(N·m)²',
    iron: '0.01 W/(rad/s)',
    windage: '5e-6 W/(rad/s)³',
    constant: '600 W',
  } as const
  it('heats as much braking as driving', () => {
    const driving = motorLoss({ ...coefficients, torque: '80 N·m', speed: '3000 rpm' })
    expect(motorLoss({ ...coefficients, torque: '-80 N·m', speed: '3000 rpm' }).si).toBe(driving.si)
  })
  it('is best at the torque at which the copper loses as much as all the rest', () => {
    const speed = '5000 rpm'
    const rest = motorLoss({ ...coefficients, torque: '0 N·m', speed }).in('W')
    const best = Math.sqrt(rest / 0.3)
    const at = (newtonMetres: number) => {
      const torque = quantity('torque', newtonMetres, 'N·m')
      const loss = motorLoss({ ...coefficients, torque, speed })
      return motorEfficiency({ shaftPower: shaftPower({ torque, speed }), loss }).si
    }
    expect(at(best)).toBeGreaterThan(at(best * 1.01))
    expect(at(best)).toBeGreaterThan(at(best / 1.01))
  })
  it('that stands has no efficiency', () => {
    expect(() => motorEfficiency({ shaftPower: '0 W', loss: '3 kW' })).toThrow(
      "shaftPower: expected a power above 0 kW, got '0 W' (Power at the shaft, driving)",
    )
  })
})

describe('grip', () => {
  const car = { mass: '900 kg', aft: '1.1 m', height: '0.5 m', wheelbase: '2.2 m' } as const
  const drawn = [
    between(0, 1.2),
    between(300, 3000),
    between(0.05, 0.95),
    between(0.1, 0.9),
    between(1.5, 3.5),
  ] as const
  const asCar = (m: number, share: number, h: number, base: number) => ({
    mass: quantity('mass', m, 'kg'),
    aft: quantity('length', share * base, 'm'),
    height: quantity('length', h, 'm'),
    wheelbase: quantity('length', base, 'm'),
  })
  it('of a rear axle is friction times its load, with what moves on to it at that pull', () => {
    fc.assert(
      fc.property(...drawn, (friction, m, share, h, base) => {
        fc.pre(friction * h < 0.999 * base * (1 - share))
        const { mass, aft, height, wheelbase } = asCar(m, share, h, base)
        const limit = tractionLimitRear({ friction, mass, aft, height, wheelbase })
        const acceleration = gripAcceleration({ tractionLimit: limit, mass })
        const load =
          rearAxleMass({ mass, aft, wheelbase }).si * 9.80665 +
          longitudinalTransfer({ mass, acceleration, height, wheelbase }).si
        expect(limit.si - friction * load).toBeCloseTo(0, 6)
      }),
    )
  })
  it('of a front axle is friction times its load, less what moves off it at that pull', () => {
    fc.assert(
      fc.property(...drawn, (friction, m, share, h, base) => {
        const { mass, aft, height, wheelbase } = asCar(m, share, h, base)
        const limit = tractionLimitFront({ friction, mass, aft, height, wheelbase })
        const acceleration = gripAcceleration({ tractionLimit: limit, mass })
        const load =
          (m - rearAxleMass({ mass, aft, wheelbase }).si) * 9.80665 -
          longitudinalTransfer({ mass, acceleration, height, wheelbase }).si
        expect(limit.si - friction * load).toBeCloseTo(0, 6)
      }),
    )
  })
  it('of a rear axle is all of the weight when the front wheels are about to lift', () => {
    // friction times height equals the distance of the centre of gravity ahead of the rear axle.
    const limit = tractionLimitRear({ ...car, friction: 2.2 })
    expect(limit.in('kgf')).toBeCloseTo(2.2 * 900, 6)
    expect(() => tractionLimitRear({ ...car, friction: 2.3 })).toThrow(
      /friction \* height \/ \(wheelbase - aft\): expected at most 1.*got 1\.045/,
    )
  })
  it('refuses a centre of gravity behind the rear axle', () => {
    const tail = { ...car, friction: 0.8, aft: '2.3 m' } as const
    expect(() => tractionLimitRear(tail)).toThrow(/aft \/ wheelbase: expected below 1/)
    expect(() => tractionLimitFront(tail)).toThrow(/aft \/ wheelbase: expected at most 1/)
  })
})

describe('gradeability', () => {
  it('is the grade on which grade force, rolling resistance and drag use up the pull', () => {
    fc.assert(
      fc.property(
        between(300, 3000),
        between(0, 0.04),
        between(0, 500),
        between(-0.3, 0.9),
        (m, coefficient, drag, grade) => {
          const mass = quantity('mass', m, 'kg')
          const air = quantity('force', drag, 'N')
          const needed = roadLoad({
            aerodynamicDrag: air,
            rollingResistance: rollingResistance({ mass, coefficient, grade }),
            gradeForce: gradeForce({ mass, grade }),
          })
          fc.pre(needed.si >= 0)
          const found = gradeability({ tractiveForce: needed, mass, coefficient, aerodynamicDrag: air })
          expect(found.si).toBeCloseTo(grade, 10)
        },
      ),
    )
  })
  it('is a fall where the force does not suffice on the level', () => {
    const weak = { tractiveForce: '50 N', mass: '800 kg', coefficient: 0.012 } as const
    expect(gradeability(weak).isAtMost(0)).toBe(true)
  })
  it('refuses a force that lifts the car straight up', () => {
    expect(() => gradeability({ tractiveForce: '9 kN', mass: '800 kg', coefficient: 0.012 })).toThrow(
      /\(tractiveForce - aerodynamicDrag\) \/ \(mass \* g0\): expected above -1 and below 1.*got 1\.147/,
    )
  })
})

describe('the grade that grip holds', () => {
  it('is that on which grade force, rolling resistance and drag use up what the wheels hold there', () => {
    fc.assert(
      fc.property(
        between(300, 3000),
        between(0, 0.04),
        between(0, 500),
        between(0, 1.5),
        (m, coefficient, drag, share) => {
          const mass = quantity('mass', m, 'kg')
          const aerodynamicDrag = quantity('force', drag, 'N')
          const onLevel = share * m * 9.80665
          const tractionLimit = quantity('force', onLevel, 'N')
          const grade = gripGradeability({ tractionLimit, mass, coefficient, aerodynamicDrag })
          fc.pre(Math.abs(grade.si) < 5)
          const needed = roadLoad({
            aerodynamicDrag,
            rollingResistance: rollingResistance({ mass, coefficient, grade }),
            gradeForce: gradeForce({ mass, grade }),
          })
          expect(needed.si - onLevel * Math.cos(Math.atan(grade.si))).toBeCloseTo(0, 7)
        },
      ),
    )
  })
})

describe('propeller shaft', () => {
  const shaft = { outerDiameter: '60 mm', elasticModulus: '205 GPa', density: '7850 kg/m³' } as const
  const speed = (length: '1.2 m' | '0.6 m', innerDiameter: '0 mm' | '56 mm') =>
    criticalSpeed({ ...shaft, length, innerDiameter })
  it('of half the length turns four times as fast', () => {
    expect(speed('0.6 m', '56 mm').ratioTo(speed('1.2 m', '56 mm'))).toBeCloseTo(4, 12)
  })
  it('as a thin tube turns √2 times as fast as a solid bar at most', () => {
    const ratio = speed('1.2 m', '56 mm').ratioTo(speed('1.2 m', '0 mm'))
    expect(ratio).toBeCloseTo(Math.hypot(60, 56) / 60, 12)
    expect(ratio).toBeLessThan(Math.SQRT2)
  })
  it('refuses a tube that is wider inside than out', () => {
    expect(() => criticalSpeed({ ...shaft, length: '1.2 m', innerDiameter: '62 mm' })).toThrow(
      /innerDiameter \/ outerDiameter: expected below 1/,
    )
  })
})
