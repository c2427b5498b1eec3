/** A panel may relax overnight: the day to look at it again. */

/** A day of the calendar here, so many days on, as `YYYY-MM-DD`. */
export function dayOn(now: Date, days: number): string {
  const day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + days);
  return [day.getFullYear(), String(day.getMonth() + 1).padStart(2, '0'), String(day.getDate()).padStart(2, '0')].join('-');
}

/** Whether that day has come. */
export const isDue = (look: string | null | undefined, now: Date): boolean => !!look && look <= dayOn(now, 0);
