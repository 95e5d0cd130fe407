/** Published values for the mass domain. */
import { cite, definition } from '../../src/formula/index.js'
import {
  boxYawInertia,
  centreOfGravityAft,
  centreOfGravityHeight,
  centreOfGravityLeft,
  commonCentre,
  crossShare,
  crossTransfer,
  frontShare,
  lateralTransfer,
  leftShare,
  longitudinalTransfer,
  offsetTransfer,
  parallelAxis,
  raisedAngle,
  rateInSeries,
  rearAxleMass,
  remainingCentre,
  rideFrequency,
  rideHeightChange,
  rollRate,
  springRateForFrequency,
  staticStabilityFactor,
  wheelRate,
} from '../../src/mass/index.js'
import { handbook } from './handbook.js'

const exercise = cite('course exercise')
const forum = cite('forum worked example')
const quarterCar = cite('Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018)', 'p. 209')
const chassis = cite('Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018)', 'p. 174')
const jazar = cite('Jazar, Vehicle Dynamics (2008)', 'example 40')
const liftedAxle = cite('ISO 10392')
const chosen = 'The formula was read in an open textbook; the numbers are chosen here and worked out by hand.'

export const massHandbook = [
  handbook(centreOfGravityAft, [
    {
      given: { rearAxleMass: '515.071 kg', mass: '1145 kg', wheelbase: '2.532 m' },
      expected: '1.139 m',
      within: '0.0001 m',
      source: exercise,
      standing: 'recomputed',
      note: 'The distance was read; the rear axle load that goes with it is 5052.8 N at 9.81 m/s².',
    },
    {
      given: { rearAxleMass: '3600 kg', mass: '7600 kg', wheelbase: '2.34 m' },
      expected: '1.1084 m',
      within: '0.0002 m',
      source: jazar,
      standing: 'read',
      note: 'The example gives wheel loads, 2000 N front and 1800 N rear at each wheel; only their ratio counts.',
    },
  ]),
  handbook(rearAxleMass, [
    {
      given: { mass: '1145 kg', aft: '1.139 m', wheelbase: '2.532 m' },
      expected: '515.071 kg',
      within: '0.011 kg',
      source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1, static axle loads'),
      standing: 'recomputed',
      note: 'Inputs read in a course exercise: 5052.8 N at 9.81 m/s², to 0.1 N.',
    },
  ]),
  handbook(raisedAngle, [
    {
      given: { rise: '0.4 m', wheelbase: '2.4 m' },
      expected: '9.5941 °',
      within: '0.00005 °',
      source: liftedAxle,
      standing: 'recomputed',
      note: chosen,
    },
  ]),
  handbook(centreOfGravityHeight, [
    {
      given: {
        mass: '1000 kg',
        wheelbase: '2.4 m',
        levelFrontMass: '500 kg',
        raisedFrontMass: '515.4945 kg',
        angle: '9.5941 °',
        axleHeight: '0.28 m',
      },
      expected: '0.5 m',
      within: '0.0001 m',
      source: liftedAxle,
      standing: 'recomputed',
      note: `${chosen} Rise over wheelbase in place of the tangent would give 0.5031 m; without the wheel centres, 0.220 m.`,
    },
  ]),
  handbook(crossShare, [
    {
      given: { frontRight: '606 kg', rearLeft: '670 kg', mass: '2555 kg' },
      expected: '49.94 %',
      within: '0.01 %',
      source: exercise,
      standing: 'recomputed',
      note: 'Wheel loads and the sum of the diagonal, 1276 of 2555, were read.',
    },
  ]),
  handbook(longitudinalTransfer, [
    {
      given: { mass: '1145 kg', acceleration: '2 m/s²', height: '0.5 m', wheelbase: '2.532 m' },
      expected: '452.2 N',
      within: '0.1 N',
      source: exercise,
      standing: 'recomputed',
      note: 'Inputs read; Gillespie, chapter 1, has the formula.',
    },
  ]),
  handbook(lateralTransfer, [
    {
      given: { mass: '140 kg', acceleration: '0.6 g', height: '0.28 m', track: '1.46 m' },
      expected: '158 N',
      within: '1 N',
      source: chassis,
      standing: 'read',
      note: 'Front unsprung mass.',
    },
    {
      given: { mass: '180 kg', acceleration: '0.6 g', height: '0.3 m', track: '1.46 m' },
      expected: '218 N',
      within: '1 N',
      source: chassis,
      standing: 'read',
      note: 'Rear unsprung mass.',
    },
    {
      given: { mass: '691.2 kg', acceleration: '0.6 g', height: '0.07 m', track: '1.46 m' },
      expected: '195 N',
      within: '1 N',
      source: chassis,
      standing: 'read',
      note: 'Sprung mass on the front axle, 54 % of 1280 kg, acting at the roll centre.',
    },
    {
      given: { mass: '588.8 kg', acceleration: '0.6 g', height: '0.32 m', track: '1.46 m' },
      expected: '760 N',
      within: '1 N',
      source: chassis,
      standing: 'read',
      note: 'Sprung mass on the rear axle, acting at the roll centre.',
    },
  ]),
  handbook(staticStabilityFactor, [
    {
      given: { track: '1.5 m', height: '0.53 m' },
      expected: 1.415,
      within: '0.001',
      source: cite('NHTSA, New Car Assessment Program, rollover resistance'),
      standing: 'recomputed',
      note: 'The formula was read; the numbers are chosen here and worked out by hand.',
    },
  ]),
  handbook(parallelAxis, [
    {
      given: { inertia: '1 kg·m²', mass: '12 kg', distance: '0.5 m' },
      expected: '4 kg·m²',
      within: 1e-12,
      source: definition,
      standing: 'exact',
      note: 'A thin rod of 12 kg and 1 m: m L² / 12 about its middle, m L² / 3 about its end.',
    },
  ]),
  handbook(wheelRate, [
    {
      given: { springRate: '140101 N/m', motionRatio: 0.7334 },
      expected: '75357 N/m',
      within: 0.001,
      source: forum,
      standing: 'read',
    },
  ]),
  handbook(rateInSeries, [
    {
      given: { first: '75357 N/m', second: '318030 N/m' },
      expected: '60922 N/m',
      within: 0.001,
      source: forum,
      standing: 'read',
    },
  ]),
  handbook(rideFrequency, [
    {
      given: { rate: '22 N/mm', sprungMass: '317.5 kg' },
      expected: '1.325 Hz',
      within: '0.001 Hz',
      source: quarterCar,
      standing: 'recomputed',
      note: 'Wheel rate alone.',
    },
    {
      given: { rate: '19.738 N/mm', sprungMass: '317.5 kg' },
      expected: '1.25 Hz',
      within: '0.00625 Hz',
      source: quarterCar,
      standing: 'read',
      note: 'With a tyre of 192 kN/m in series. The book has the unsprung mass of 45.4 kg too, which matters little here.',
    },
    {
      given: { rate: '60922 N/m', sprungMass: '312 kg' },
      expected: '2.22 Hz',
      within: '0.005 Hz',
      source: forum,
      standing: 'read',
      note: 'The example calls the 312 kg unsprung, which a reply corrects.',
    },
  ]),
  handbook(springRateForFrequency, [
    {
      given: { frequency: '1.325 Hz', sprungMass: '317.5 kg', motionRatio: 1 },
      expected: '22 N/mm',
      within: 0.001,
      source: quarterCar,
      standing: 'recomputed',
    },
    {
      given: { frequency: '2.4735 Hz', sprungMass: '312 kg', motionRatio: 0.7334 },
      expected: '800 lbf/in',
      within: 0.001,
      source: forum,
      standing: 'recomputed',
      note: 'The frequency on the wheel rate of 75 357 N/m alone was worked out by hand.',
    },
  ]),
  handbook(rideHeightChange, [
    {
      given: { massChange: '100 lb', rate: '800 lbf/in' },
      expected: '-0.125 in',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(rollRate, [
    {
      given: { rate: '20 N/mm', track: '1.4 m' },
      expected: '19600 N·m/rad',
      within: 1e-12,
      source: definition,
      standing: 'exact',
      note: 'Each spring of 20 000 N/m, 0.7 m out, moves 0.7 m per radian: 14 000 N at 0.7 m, twice.',
    },
  ]),
  handbook(frontShare, [
    {
      given: { aft: '1.1084 m', wheelbase: '2.34 m' },
      expected: '52.632 %',
      within: '0.01 %',
      source: jazar,
      standing: 'recomputed',
      note: 'The distance was read, and the wheel loads: 2000 N of 3800 N stand on each front wheel.',
    },
  ]),
  handbook(centreOfGravityLeft, [
    {
      given: {
        frontLeft: '259.23 kg',
        frontRight: '240.77 kg',
        rearLeft: '256.15 kg',
        rearRight: '243.85 kg',
        frontTrack: '1.3 m',
        rearTrack: '1.3 m',
      },
      expected: '20 mm',
      within: '0.02 mm',
      source: definition,
      standing: 'exact',
      note: 'The corner masses of 1000 kg whose centre of gravity lies 20 mm left, rounded to 0.01 kg.',
    },
    {
      given: {
        frontLeft: '300 kg',
        frontRight: '200 kg',
        rearLeft: '200 kg',
        rearRight: '300 kg',
        frontTrack: '1.4 m',
        rearTrack: '1.2 m',
      },
      expected: '10 mm',
      within: 1e-12,
      source: definition,
      standing: 'exact',
      note: 'Moments about the centre line: 100 kg at 0.7 m left, 100 kg at 0.6 m right, over 1000 kg.',
    },
  ]),
  handbook(commonCentre, [
    {
      given: { firstMass: '1 kg', first: '0 m', secondMass: '3 kg', second: '2 m' },
      expected: '1.5 m',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(remainingCentre, [
    {
      given: { mass: '4 kg', centre: '1.5 m', partMass: '3 kg', part: '2 m' },
      expected: '0 m',
      within: '1e-12 m',
      source: definition,
      standing: 'exact',
      note: 'The two masses of 1 kg at 0 m and 3 kg at 2 m, taken apart again.',
    },
    {
      given: { mass: '10 kg', centre: '1 m', partMass: '2 kg', part: '3 m' },
      expected: '0.5 m',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(offsetTransfer, [
    {
      given: { mass: '1000 kg', left: '20 mm', rollShare: 0.6, track: '1.3 m' },
      expected: '9.2308 kg',
      within: '0.0001 kg',
      source: definition,
      standing: 'exact',
      note: 'Half of the difference 2 W e λ / t between the wheels of the axle: 259.23 kg left, 240.77 kg right.',
    },
  ]),
  handbook(leftShare, [
    {
      given: { frontLeft: '694 lb', rearLeft: '670 lb', mass: '2555 lb' },
      expected: '53.386 %',
      within: '0.001 %',
      source: exercise,
      standing: 'recomputed',
      note: 'Wheel loads and their total were read: 1364 of 2555 on the left.',
    },
  ]),
  handbook(crossTransfer, [
    {
      given: { shareChange: '1 %', mass: '1000 kg', track: '1.2 m', otherTrack: '1.3 m' },
      expected: '5.2 kg',
      within: 1e-12,
      source: definition,
      standing: 'exact',
      note: 'With 4.8 kg across the other axle it moves 10 kg to the diagonal: 5.2 kg at 1.2 m turns as 4.8 kg at 1.3 m.',
    },
  ]),
  handbook(boxYawInertia, [
    {
      given: { mass: '12 kg', length: '3 m', width: '4 m' },
      expected: '25 kg·m²',
      within: 1e-12,
      source: definition,
      standing: 'exact',
    },
  ]),
]
