//! A job as the report wants it.

use crate::vin::check_digit_warning;
use dentwright_flow::{Compared, GridFacts, MetalFile, OilCanFacts, Place, ReadingFile, SeriesEntry};
use dentwright_job::{Car, ChassisNumber, Damage, DentEntry, Job, Language, LengthUnit, Shop, Source, cautions};
use dentwright_price::Quote;
use dentwright_report as paper;
use dentwright_surface::{LaidBy, Map, Verdict, Way, read_npy};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::collections::HashMap;
use std::sync::Arc;
use uuid::Uuid;

/// What lies in files.
#[derive(Default)]
pub struct Loaded {
    /// Photos, under their hashes.
    pub images: Vec<paper::NamedImage>,
    /// Readings of each damage, oldest first.
    pub readings: HashMap<Uuid, Vec<LoadedReading>>,
    /// What the work changed at each damage.
    pub changes: HashMap<Uuid, LoadedChange>,
}

/// A reading with its files.
pub struct LoadedReading {
    /// When it was made.
    pub created: Timestamp,
    /// What was found.
    pub facts: ReadingFile,
    /// Hash of the panel photo.
    pub photo: String,
    /// The deviation map, NPY.
    pub deviation: Vec<u8>,
    /// What the metal holds, with its maps of stretch and tension, NPY.
    pub metal: Option<(MetalFile, [Vec<u8>; 2])>,
}

/// A change with the readings it is of.
pub struct LoadedChange {
    /// From the first reading to the last.
    pub compared: Arc<Compared>,
    /// All readings: when they were made, what was left, their deviations.
    pub series: Vec<(Timestamp, SeriesEntry, Map)>,
}

/// The language of the shop's papers.
pub fn language_of(shop: &Shop) -> paper::Language {
    match shop.language {
        Language::En => paper::Language::En,
        Language::De => paper::Language::De,
    }
}

/// Everything that the report shows.
pub fn report_data(job: &Job, shop: &Shop, quote: Option<Quote>, mut loaded: Loaded, date: Date) -> paper::ReportData {
    let inches = shop.length_unit == LengthUnit::Inch;
    let damage = |one: &Damage| {
        let readings = loaded.readings.remove(&one.id).unwrap_or_default();
        of_damage(one, readings, loaded.changes.remove(&one.id))
    };
    paper::ReportData {
        language: language_of(shop),
        length_unit: if inches { paper::LengthUnit::Inch } else { paper::LengthUnit::Mm },
        paper: if inches { paper::Paper::Letter } else { paper::Paper::A4 },
        date,
        number: job.number.clone(),
        shop: paper::Shop {
            name: shop.name.clone(),
            address: shop.address.clone(),
            phone: shop.phone.clone(),
            email: shop.email.clone(),
            tax_id: shop.tax_id.clone(),
        },
        customer: paper::Customer {
            name: job.customer.name.clone(),
            address: job.customer.address.clone(),
            phone: job.customer.phone.clone(),
            email: job.customer.email.clone(),
        },
        car: of_car(&job.car),
        damages: job.damages.iter().map(damage).collect(),
        quote,
        cautions: caution_codes(job),
        notes: job.notes.clone(),
        images: loaded.images,
    }
}

/// Each caution once, in order.
fn caution_codes(job: &Job) -> Vec<String> {
    let mut codes: Vec<String> =
        cautions(&job.car, &job.damages).iter().map(|one| one.code.code().to_owned()).collect();
    codes.dedup();
    codes
}

fn of_car(car: &Car) -> paper::Car {
    let vin_note = match &car.vin {
        Some(ChassisNumber::Vin(vin)) => check_digit_warning(vin),
        Some(other) => other.error().map(|why| why.to_string()).unwrap_or_default(),
        None => String::new(),
    };
    paper::Car {
        title: car.title(),
        year: car.year,
        plate: car.plate.clone(),
        vin: car.vin.as_ref().map(|number| number.as_str().to_owned()).unwrap_or_default(),
        vin_note,
        colour: car.colour.clone(),
        paint: car.paint.clone(),
        odometer_km: car.odometer_km,
    }
}

fn of_damage(damage: &Damage, readings: Vec<LoadedReading>, change: Option<LoadedChange>) -> paper::Damage {
    let photo = |photo: &dentwright_job::Photo| paper::Photo { image: photo.hash.clone(), caption: String::new() };
    paper::Damage {
        panel: damage.panel.code().to_owned(),
        at: (damage.at.x(), damage.at.y()),
        note: damage.note.clone(),
        dents: damage.dents.iter().map(of_dent).collect(),
        photos: damage.photos.iter().map(photo).collect(),
        readings: readings.into_iter().map(of_reading).collect(),
        change: change.map(of_change),
    }
}

fn of_change(loaded: LoadedChange) -> paper::Change {
    let change = &loaded.compared.change;
    let worked = |one: &dentwright_surface::Worked| paper::Worked {
        better: one.way == Way::Better,
        before_mm: one.before_mm,
        after_mm: one.after_mm,
        change_mm: one.change_mm,
        sigma_mm: one.sigma_mm,
    };
    let step = |(created, entry, map): (Timestamp, SeriesEntry, Map)| paper::SeriesStep {
        date: Some(created.to_zoned_datetime(TimeZone::system()).date()),
        map: Some(of_map(&map)),
        largest_mm: entry.residual.largest_mm,
        sigma_mm: entry.residual.sigma_mm,
        volume_mm3: entry.residual.volume.mm3,
        volume_sigma_mm3: entry.residual.volume.sigma_mm3,
    };
    paper::Change {
        map: (!change.worked.is_empty()).then(|| of_map(&change.map)),
        by_tags: matches!(loaded.compared.laying.by, LaidBy::Tags { .. }),
        worked: change.worked.iter().map(worked).collect(),
        raised_mm3: (change.raised.mm3, change.raised.sigma_mm3),
        lowered_mm3: (change.lowered.mm3, change.lowered.sigma_mm3),
        series: loaded.series.into_iter().map(step).collect(),
    }
}

fn of_map(map: &Map) -> paper::Map {
    let grid = map.grid;
    paper::Map {
        x0_mm: grid.x0_mm,
        y0_mm: grid.y0_mm,
        step_mm: grid.step_mm,
        nx: grid.nx,
        ny: grid.ny,
        deviation_mm: map.values.clone(),
    }
}

fn of_dent(entry: &DentEntry) -> paper::DentRow {
    let (sigma_mm, at_least) = match entry.source {
        Source::Hand => (None, false),
        Source::Reading { sigma_mm, at_least, .. } => (Some(sigma_mm), at_least),
    };
    paper::DentRow { dent: entry.dent.clone(), sigma_mm, measured: sigma_mm.is_some(), at_least }
}

fn of_reading(reading: LoadedReading) -> paper::Reading {
    let facts = reading.facts;
    let map = paper_map(&reading.deviation, &facts.grid);
    let camera = &facts.camera;
    paper::Reading {
        date: Some(reading.created.to_zoned_datetime(TimeZone::system()).date()),
        map,
        photo: Some(reading.photo),
        spots: facts.spots.iter().map(|one| of_spot(&one.spot)).collect(),
        finish: paper::Finish {
            limit_mm: facts.finish.limit_mm,
            verdict: match facts.finish.verdict {
                Verdict::Done => paper::Verdict::Done,
                Verdict::NotDone => paper::Verdict::NotDone,
                Verdict::CannotTell => paper::Verdict::CannotTell,
            },
            reason: facts.finish.reason,
        },
        read_fraction: facts.read_fraction,
        absolute: facts.scale == "absolute",
        unread: facts.unread.into_iter().map(of_unread).collect(),
        notes: facts.notes.into_iter().map(|note| paper::Note { code: note.code, text: note.text }).collect(),
        frames: facts.frames.into_iter().map(of_frame).collect(),
        camera: {
            let day = camera.calibrated.as_deref().map(|day| format!(" {day}")).unwrap_or_default();
            format!("{}{day} ({:.0} px)", camera.source, camera.focal_px)
        },
        version: facts.version,
        settings: flat_settings(&facts.settings, ""),
        metal: reading.metal.map(|(metal, maps)| of_metal(&metal, maps)),
    }
}

fn of_spot(spot: &dentwright_surface::Spot) -> paper::Spot {
    paper::Spot {
        x_mm: spot.x_mm,
        y_mm: spot.y_mm,
        height_mm: spot.height_mm,
        sigma_mm: spot.sigma_mm,
        length_mm: spot.length_mm,
        width_mm: spot.width_mm,
        angle_deg: spot.angle_deg,
        at_least_mm: spot.at_least_mm,
    }
}

fn of_unread(unread: dentwright_flow::UnreadFacts) -> paper::Unread {
    paper::Unread { code: unread.code, fraction: unread.fraction, text: unread.text, next: unread.next }
}

fn of_frame(frame: dentwright_flow::FrameFacts) -> paper::Frame {
    paper::Frame { file: frame.file, role: frame.role, used: frame.ok, note: frame.note }
}

fn of_metal(metal: &MetalFile, maps: [Vec<u8>; 2]) -> paper::MetalState {
    let grid = &metal.grid;
    let [stretch_map, tension_map] = maps.map(|bytes| paper_map(&bytes, grid));
    let pair = |place: &Option<Place>| place.as_ref().map(|place| [place.value.value.abs(), place.value.doubt]);
    let oil_can = |found: &Option<OilCanFacts>| {
        found.map(|one| paper::OilCan {
            stable: one.stable,
            pops: one.pops.map(|pop| ([pop.force_n.value, pop.force_n.doubt], pop.stays)),
        })
    };
    paper::MetalState {
        sheet: metal.sheet.metal.clone(),
        thickness_mm: [metal.sheet.thickness_mm.low, metal.sheet.thickness_mm.high],
        held: metal.held,
        stretch: pair(&metal.stretch),
        bent: pair(&metal.bent),
        pulled: pair(&metal.pulled),
        pressed: pair(&metal.pressed),
        crown: metal.held_by_crown.is_some(),
        oil_can: [oil_can(&metal.oil_can_now), oil_can(&metal.oil_can_level)],
        stretch_map,
        tension_map,
    }
}

/// A map out of a file, where it is of the grid's size.
fn paper_map(bytes: &[u8], grid: &GridFacts) -> Option<paper::Map> {
    let map = read_npy(bytes).ok().filter(|map| map.shape == [grid.ny, grid.nx])?;
    let (x0_mm, y0_mm, step_mm) = (grid.x0_mm, grid.y0_mm, grid.step_mm);
    let deviation_mm = map.values.iter().map(|v| *v as f32).collect();
    Some(paper::Map { x0_mm, y0_mm, step_mm, nx: grid.nx, ny: grid.ny, deviation_mm })
}

/// Settings as lines, names joined by dots.
fn flat_settings(settings: &serde_json::Value, under: &str) -> Vec<(String, String)> {
    let Some(fields) = settings.as_object() else { return vec![(under.to_owned(), settings.to_string())] };
    let joined = |name: &str| if under.is_empty() { name.to_owned() } else { format!("{under}.{name}") };
    fields.iter().flat_map(|(name, value)| flat_settings(value, &joined(name))).collect()
}
