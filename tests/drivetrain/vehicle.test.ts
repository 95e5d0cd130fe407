/** The one description of a vehicle: a whole one is read, and what it says of itself holds together. */
import { describe, expect, it } from 'vitest'
import { spareParts, type Vehicle } from '../../src/drivetrain/vehicle.js'
import { definition, type Formula } from '../../src/formula/index.js'
import { fieldsOf, jsonSchemaOf, procedure } from '../../src/procedure/index.js'
import { type Given, type Kind, quantity } from '../../src/quantity/index.js'

const read = procedure({
  name: 'vehicle',
  title: 'A vehicle',
  answers: 'Is it a vehicle?',
  input: spareParts,
  source: [definition] satisfies Formula['source'][],
  work: (asked) => asked,
})

/** An invented van. */
const van = {
  car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²', tyre: '145 R10', drivenAxle: 'rear' },
  gearbox: { gears: { first: 3.6, second: 2.1 }, finalDrive: 4.4, efficiency: 0.93 },
  motor: { peakTorque: '90 N·m', peakPower: '30 kW', maximumSpeed: '8000 rpm', efficiency: 0.9 },
  controller: { batteryCurrent: '250 A', regeneration: 0.5 },
  auxiliaries: '200 W',
  air: { temperature: '-7 °C' },
} as const satisfies Vehicle

describe('the vehicle', () => {
  it('is read whole, and none of its parts is handed to a work that does not ask for it', () => {
    expect(read(van)).toEqual({})
  })

  it('refuses what is none of its fields, and says where a field belongs', () => {
    expect(() => read({ ...van, finalDrive: '4.4' } as never)).toThrow('(finalDrive belongs in gearbox)')
    expect(() => read({ ...van, motor: { ...van.motor, peakTorque: '90 V' } } as never)).toThrow(
      'motor.peakTorque: expected a torque such as',
    )
  })

  it('has usual ranges that hold something, and defaults within them', () => {
    const usual = fieldsOf(read).flatMap(({ path, field }) =>
      field.sort === 'quantity' && field.usual !== undefined ? [{ path, field, usual: field.usual }] : [],
    )
    expect(usual.length).toBeGreaterThan(15)
    for (const { path, field, usual: range } of usual) {
      const [least, most] = [range[0], range[1]].map((each) => quantity<Kind>(field.kind, each as Given<Kind>).si)
      expect(most, path).toBeGreaterThan(least as number)
      if (field.default === undefined) continue
      const stands = quantity<Kind>(field.kind, field.default as Given<Kind>).si
      expect(stands, path).toBeGreaterThanOrEqual(least as number)
      expect(stands, path).toBeLessThanOrEqual(most as number)
    }
  })

  it('has a JSON Schema that knows its parts and allows no others', () => {
    const { properties, additionalProperties } = jsonSchemaOf(read)
    expect(Object.keys(properties as object)).toEqual(Object.keys(spareParts))
    expect(additionalProperties).toBe(false)
  })
})
