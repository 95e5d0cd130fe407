/** Drive cycles as regulations publish them second by second, by name; apart from the others for what they weigh. */
export { type ScheduleName, schedules } from './schedules.js'
