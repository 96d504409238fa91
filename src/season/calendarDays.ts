// for files that still ask here
export { addDays, dayOfNumber, daysBetween, sameDayOfYear, weekdayOf } from '../yard/calendar';
export { isInStretch } from '../yard/yearDay';
export { weeksOfYear } from './weeksOfYear';
