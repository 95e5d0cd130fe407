/** How the formulas of the mass domain move with their inputs. */
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
import { lawsOf } from '../laws.js'

const bothWays =
  'either: mass moves forwards or backwards as the centre of gravity lies above or below the wheel centres'
const eitherSign = 'either: braking moves the load the other way'
const eitherHand = 'either: a bend to the other hand moves the load the other way'
const eitherSide = 'either: the load lies to the left or to the right'
const drawnTo = 'either: the common centre of gravity is drawn to the mass that grows'

export const massLaws = [
  lawsOf(centreOfGravityAft, { rearAxleMass: 'rises', mass: 'falls', wheelbase: 'rises' }),
  lawsOf(rearAxleMass, {
    mass: 'either: a part ahead of the front axle takes load off the rear',
    aft: 'rises',
    wheelbase: 'either: a part ahead of the front axle takes load off the rear',
  }),
  lawsOf(raisedAngle, { rise: 'rises', wheelbase: 'falls' }),
  lawsOf(centreOfGravityHeight, {
    mass: bothWays,
    wheelbase: bothWays,
    levelFrontMass: 'falls',
    raisedFrontMass: 'rises',
    angle: bothWays,
    axleHeight: 'rises',
  }),
  lawsOf(crossShare, { frontRight: 'rises', rearLeft: 'rises', mass: 'falls' }),
  lawsOf(longitudinalTransfer, {
    mass: eitherSign,
    acceleration: 'rises',
    height: eitherSign,
    wheelbase: eitherSign,
  }),
  lawsOf(lateralTransfer, { mass: eitherHand, acceleration: 'rises', height: eitherHand, track: eitherHand }),
  lawsOf(staticStabilityFactor, { track: 'rises', height: 'falls' }),
  lawsOf(parallelAxis, { inertia: 'rises', mass: 'rises', distance: 'rises' }),
  lawsOf(wheelRate, { springRate: 'rises', motionRatio: 'rises' }),
  lawsOf(rateInSeries, { first: 'rises', second: 'rises' }),
  lawsOf(rideFrequency, { rate: 'rises', sprungMass: 'falls' }),
  lawsOf(springRateForFrequency, { frequency: 'rises', sprungMass: 'rises', motionRatio: 'falls' }),
  lawsOf(rideHeightChange, {
    massChange: 'falls',
    rate: 'either: mass taken out lets the car rise, mass put in lets it sink',
  }),
  lawsOf(rollRate, { rate: 'rises', track: 'rises' }),
  lawsOf(frontShare, {
    aft: 'falls',
    wheelbase: 'either: a centre of gravity ahead of the front axle has more than all on it',
  }),
  lawsOf(centreOfGravityLeft, {
    frontLeft: 'either: load on a narrow axle pulls in a centre of gravity that lies outside its wheels',
    frontRight: 'either: load on a narrow axle pulls in a centre of gravity that lies outside its wheels',
    rearLeft: 'either: load on a narrow axle pulls in a centre of gravity that lies outside its wheels',
    rearRight: 'either: load on a narrow axle pulls in a centre of gravity that lies outside its wheels',
    frontTrack: eitherSide,
    rearTrack: eitherSide,
  }),
  lawsOf(commonCentre, { firstMass: drawnTo, first: 'rises', secondMass: drawnTo, second: 'rises' }),
  lawsOf(remainingCentre, { mass: drawnTo, centre: 'rises', partMass: drawnTo, part: 'falls' }),
  lawsOf(offsetTransfer, { mass: eitherSide, left: 'rises', rollShare: eitherSide, track: eitherSide }),
  lawsOf(leftShare, { frontLeft: 'rises', rearLeft: 'rises', mass: 'falls' }),
  lawsOf(crossTransfer, {
    shareChange: 'rises',
    mass: 'either: cross weight is put on or taken off',
    track: 'either: cross weight is put on or taken off',
    otherTrack: 'either: cross weight is put on or taken off',
  }),
  lawsOf(boxYawInertia, { mass: 'rises', length: 'rises', width: 'rises' }),
]
