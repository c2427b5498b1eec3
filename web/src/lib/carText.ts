import type { Job, NewJob } from '../api/types';

/** ISO 3779. */
const VIN_LENGTH = 17;

/** A customer and a car as they stand in the form: everything is text until it is sent. */
export const BLANK = {
  name: '', phone: '', email: '', address: '',
  plate: '', make: '', model: '', year: '', colour: '', paint: '', odometer_km: '', vin: '', high_voltage: 'unknown' as 'unknown' | 'yes' | 'no',
  promised: '', promised_time: '', place: '', notes: '',
};
export type CarText = typeof BLANK;

/** The form of a job that is already there. */
export function textOf(job: Job): CarText {
  const { customer, car } = job;
  return {
    name: customer.name, phone: customer.phone, email: customer.email, address: customer.address,
    plate: car.plate, make: car.make, model: car.model, year: car.year ? String(car.year) : '', colour: car.colour, paint: car.paint,
    odometer_km: car.odometer_km === null ? '' : String(car.odometer_km), vin: car.vin ?? '',
    high_voltage: car.high_voltage == null ? 'unknown' : car.high_voltage ? 'yes' : 'no',
    promised: job.promised ?? '', promised_time: job.promised_time?.slice(0, 5) ?? '', place: job.place, notes: job.notes,
  };
}

/** What is sent. Numbers that are none are left out rather than guessed. */
export function jobOf(text: CarText, metals: Record<string, 'steel' | 'high_strength_steel' | 'aluminium'> = {}): NewJob {
  const vin = vinOf(text.vin);
  return {
    customer: { name: text.name.trim(), phone: text.phone.trim(), email: text.email.trim(), address: text.address.trim() },
    car: {
      vin: vin || null,
      plate: text.plate.trim(), make: text.make.trim(), model: text.model.trim(),
      year: whole(text.year), colour: text.colour.trim(), paint: text.paint.trim(), odometer_km: whole(text.odometer_km),
      high_voltage: text.high_voltage === 'unknown' ? null : text.high_voltage === 'yes',
      metals,
    },
    promised: text.promised || null,
    promised_time: (text.promised && text.promised_time && `${text.promised_time.slice(0, 5)}:00`) || null,
    place: text.place.trim(),
    notes: text.notes.trim(),
  };
}

/** In capitals; a VIN without the spaces and hyphens that it is often written with. */
export function vinOf(text: string): string {
  const bare = text.toUpperCase().replace(/[\s-]/g, '');
  return bare.length === VIN_LENGTH ? bare : text.trim().toUpperCase();
}

function whole(text: string): number | null {
  const digits = text.replace(/[\s.,]/g, '');
  return /^\d{1,9}$/.test(digits) ? Number(digits) : null;
}
