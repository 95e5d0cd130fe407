/** What is asked of a contactor: its load, the pack and its faults, the fuse beside it, and the contactors to choose from. */
import {
  choice,
  flag,
  given,
  group,
  isAbove,
  list,
  optional,
  pairs,
  type Read,
  text,
  whole,
} from '../../procedure/index.js'
import { tableIssues } from '../../procedure/table.js'
import { InputError, type InputIssue, type Quantity } from '../../quantity/index.js'
import { HOT_DAY, LOADS, profileField } from '../cable/course.js'
import { fuseField, fuseFields } from '../fuse/task.js'

/** What a contactor breaks, how often. */
const breaksField = /*@__PURE__*/ (() =>
  group('A current that it breaks', {
    voltage: given('voltage', 'Up to what direct voltage', { above: 0, usual: ['12 V', '1500 V'] }),
    current: given('current', 'Greatest current', { above: 0, usual: ['1 A', '5000 A'] }),
    times: whole('How often in its life', { min: 1 }),
  }))()

/** A contactor as its maker describes it. */
const contactorField = /*@__PURE__*/ (() =>
  group('A contactor', {
    name: optional(text('What it is called')),
    carry: given('current', 'Current that it carries all day', { above: 0, usual: ['5 A', '1000 A'] }),
    ambient: optional(
      given('temperature', 'Greatest temperature of the air around it at which it carries that', {
        usual: ['25 °C', '125 °C'],
      }),
    ),
    thermalTimeConstant: optional(
      given('time', 'Time constant with which it warms', { above: 0, usual: ['10 s', '1 h'] }),
    ),
    category: optional(choice('Its utilisation category, IEC 60947-4-1', ['DC-1', 'DC-3', 'DC-5'])),
    operational: optional(
      group('What that category holds for', {
        voltage: given('voltage', 'Rated operational voltage', { above: 0 }),
        current: given('current', 'Rated operational current', { above: 0 }),
      }),
    ),
    make: optional(given('current', 'Greatest current that it makes', { above: 0, usual: ['5 A', '5000 A'] })),
    breaks: optional(list('What it breaks', breaksField, { least: 1 })),
    polarised: optional(flag('Whether it breaks currents of one direction only')),
    breaksBackwards: optional(list('What a polarised one breaks of currents the other way', breaksField, { least: 1 })),
    shortTime: optional(
      pairs(
        'What it carries for a short time, the currents rising',
        given('current', 'Current', { above: 0 }),
        given('time', 'For how long', { above: 0, usual: ['1 ms', '2 h'] }),
        { least: 1 },
      ),
    ),
    peak: optional(
      given('current', 'Greatest peak of a fault that it withstands closed', { above: 0, usual: ['0.5 kA', '100 kA'] }),
    ),
  }))()

/** A contactor as it is read. @internal */
export type Contactor = Read<typeof contactorField>

/** Contactors to choose from. @internal */
export const contactorsField = /*@__PURE__*/ (() => list('Contactors to choose from', contactorField, { least: 1 }))()

/** When its control opens a contactor on an overcurrent. @internal */
export const tripField = /*@__PURE__*/ (() =>
  optional(
    group('When its control opens it on an overcurrent', {
      current: given('current', 'From what current', { above: 0 }),
      time: given('time', 'After how long', { min: 0, usual: ['1 ms', '60 s'] }),
    }),
  ))()

/** How often a contactor opens under load. @internal */
export const openingsField = /*@__PURE__*/ (() =>
  whole('How often it opens under full load in its life', {
    min: 1,
    max: 1_000_000,
    default: 50,
    because: 'emergencies and faults of the control: else the current is zero first, common practice, no source',
  }))()

/** What is asked of a contactor. @internal */
export const contactorFields = /*@__PURE__*/ (() => ({
  voltage: given('voltage', 'Voltage of the full pack', { above: 0, max: '1500 V', usual: ['48 V', '400 V'] }),
  current: given('current', 'Continuous current of the load', { above: 0, usual: LOADS }),
  profile: optional(profileField, { absent: 'The load is steady.' }),
  controller: fuseFields.controller,
  backwards: given('current', 'Greatest current back into the pack; 0 A where none flows', {
    min: 0,
    usual: ['0 A', '500 A'],
  }),
  openings: openingsField,
  ambient: given('temperature', 'Temperature of the air around it', {
    above: '-90 °C',
    below: '200 °C',
    usual: ['20 °C', '85 °C'],
    ...HOT_DAY,
  }),
  precharge: optional(
    group('What the precharge leaves', {
      residualVoltage: given('voltage', 'Voltage left across the contactor', { min: 0 }),
      loopResistance: given('resistance', 'Resistance of pack and loop within 10 ms', { above: 0 }),
    }),
  ),
  fault: optional(
    group('Faults that the pack feeds', {
      highest: given('current', 'Greatest current of a fault', { above: 0 }),
      lowest: given('current', 'Least current of a fault', { above: 0 }),
      fuse: optional(fuseField),
      cutOff: optional(given('current', 'Greatest peak that the fuse lets through', { above: 0 })),
    }),
  ),
  trip: tripField,
  candidates: contactorsField,
}))()

/** What is asked of a contactor, as it is read. @internal */
export type ContactorTask = Read<typeof contactorFields>

/** Refuses what contradicts itself. @internal */
export function refuseContactorTask(where: string, { fault, candidates }: ContactorTask): void {
  const issues = candidates.flatMap((each, c) => contactorIssues(`candidates[${c}]`, each))
  if (fault !== undefined && isAbove(fault.lowest, fault.highest)) {
    issues.push({
      path: 'fault.lowest',
      expected: `at most the greatest, ${fault.highest}`,
      received: String(fault.lowest),
    })
  }
  if (issues.length > 0) throw new InputError(where, issues)
}

function contactorIssues(path: string, contactor: Contactor): InputIssue[] {
  const { category, operational, polarised, breaksBackwards, shortTime = [], carry, peak } = contactor
  const issues: InputIssue[] = []
  const needs = (key: string, expected: string) =>
    issues.push({ path: `${path}.${key}`, expected, received: 'nothing' })
  if (category !== undefined && operational === undefined) {
    needs('operational', `what ${category} holds for, such as { voltage: '220 V', current: '150 A' }`)
  }
  if (operational !== undefined && category === undefined)
    needs('category', "the category that it is stated for, such as 'DC-1'")
  if (breaksBackwards !== undefined && polarised !== true) {
    needs('polarised', 'true: one that is not polarised breaks alike both ways')
  }
  const least = (at: string, bound: Quantity<'current'>, what: string, current: Quantity<'current'>) => {
    if (!isAbove(bound, current)) return
    issues.push({ path: `${path}.${at}`, expected: `at least ${what}, ${bound}`, received: String(current) })
  }
  shortTime.forEach(([current], i) => {
    least(`shortTime[${i}][0]`, carry, 'what it carries all day', current)
  })
  if (peak !== undefined) least('peak', carry, 'what it carries all day', peak)
  issues.push(...tableIssues(`${path}.shortTime`, shortTime, 'current', { falls: 'time' }))
  return issues
}
