//! What a report is made from: plain values, filled by whoever has the record.

use dentwright_price::{Dent, Quote};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Language of a paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
    /// French.
    Fr,
    /// Italian.
    It,
    /// Spanish.
    Es,
    /// Polish.
    Pl,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 6] = [Self::En, Self::De, Self::Fr, Self::It, Self::Es, Self::Pl];

    /// Its code, ISO 639-1.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::De => "de",
            Self::Fr => "fr",
            Self::It => "it",
            Self::Es => "es",
            Self::Pl => "pl",
        }
    }

    /// The language of a code.
    #[must_use]
    pub fn of(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.code() == code)
    }
}

/// Unit of length on paper; everything inside is in millimetres.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Millimetres and micrometres.
    #[default]
    Mm,
    /// Inches and thousandths of an inch (mil).
    Inch,
}

/// Size of the sheet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Paper {
    /// 210 × 297 mm.
    #[default]
    A4,
    /// 8.5 × 11 in.
    Letter,
}

/// Everything a report shows. Empty texts and lists leave their place out.
#[derive(Debug, Clone, PartialEq)]
pub struct ReportData {
    /// Language of the labels.
    pub language: Language,
    /// Unit of length.
    pub length_unit: LengthUnit,
    /// Size of the sheet.
    pub paper: Paper,
    /// Day of the report.
    pub date: Date,
    /// Number of the job.
    pub number: String,
    /// Who measured and quotes.
    pub shop: Shop,
    /// Who asked for it.
    pub customer: Customer,
    /// The car.
    pub car: Car,
    /// Damages in the order they are shown.
    pub damages: Vec<Damage>,
    /// The quote, if there is one yet.
    pub quote: Option<Quote>,
    /// Codes of the cautions that apply, in order; texts are looked up here.
    pub cautions: Vec<String>,
    /// Anything to add, as entered.
    pub notes: String,
    /// Photos, named by [`Photo::image`] and [`Reading::photo`].
    pub images: Vec<NamedImage>,
}

/// The shop's head.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shop {
    /// Its name.
    pub name: String,
    /// Street and town; lines are kept.
    pub address: String,
    /// Telephone.
    pub phone: String,
    /// Mail address.
    pub email: String,
    /// Tax number.
    pub tax_id: String,
}

/// The customer.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Customer {
    /// Name.
    pub name: String,
    /// Street and town; lines are kept.
    pub address: String,
    /// Telephone.
    pub phone: String,
    /// Mail address.
    pub email: String,
}

/// The car.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Car {
    /// Make and model.
    pub title: String,
    /// Year of building.
    pub year: Option<i16>,
    /// Number plate.
    pub plate: String,
    /// Vehicle identification number.
    pub vin: String,
    /// What there is to say about the VIN, such as a check digit that does not fit.
    pub vin_note: String,
    /// Colour.
    pub colour: String,
    /// Paint, such as clear coat over metallic.
    pub paint: String,
    /// Distance driven, km.
    pub odometer_km: Option<u32>,
}

/// One area of one panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Damage {
    /// Panel code, such as `front_door_left`.
    pub panel: String,
    /// Place on the panel as the app draws it, front up: right and down, 0 to 1 of its box.
    pub at: (f64, f64),
    /// Note, as entered.
    pub note: String,
    /// Its dents.
    pub dents: Vec<DentRow>,
    /// Its photos.
    pub photos: Vec<Photo>,
    /// Its readings, oldest first.
    pub readings: Vec<Reading>,
    /// What the work changed.
    pub change: Option<Change>,
}

/// What the work changed, from the first reading to the last.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// The change, drawn by the report like a deviation: positive came up.
    pub map: Option<Map>,
    /// Laid on each other by the tags (true) or by the paint's texture.
    pub by_tags: bool,
    /// Areas that changed, the most changed first.
    pub worked: Vec<Worked>,
    /// Volume that came up and its standard deviation, mm³.
    pub raised_mm3: (f64, f64),
    /// Volume that went down and its standard deviation, mm³.
    pub lowered_mm3: (f64, f64),
    /// All readings, oldest first.
    pub series: Vec<SeriesStep>,
}

/// An area that changed.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// Nearer to the intended shape (true) or farther from it.
    pub better: bool,
    /// Deviation before, mm.
    pub before_mm: f64,
    /// Deviation now, mm.
    pub after_mm: f64,
    /// Change, mm.
    pub change_mm: f64,
    /// Its standard deviation, mm.
    pub sigma_mm: f64,
}

/// A reading of the series.
#[derive(Debug, Clone, PartialEq)]
pub struct SeriesStep {
    /// Day it was taken.
    pub date: Option<Date>,
    /// Its map.
    pub map: Option<Map>,
    /// Largest deviation left, mm, signed.
    pub largest_mm: f64,
    /// Its standard deviation, mm.
    pub sigma_mm: f64,
    /// Volume left, mm³.
    pub volume_mm3: f64,
    /// Its standard deviation, mm³.
    pub volume_sigma_mm3: f64,
}

/// One row of the table of dents.
#[derive(Debug, Clone, PartialEq)]
pub struct DentRow {
    /// The dent.
    pub dent: Dent,
    /// One standard deviation of the depth, mm; none for a dent entered by hand.
    pub sigma_mm: Option<f64>,
    /// Measured (true) or entered by hand.
    pub measured: bool,
    /// Whether the depth is a lower bound: part of the dent was too steep to read.
    pub at_least: bool,
}

/// A photo of a damage.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// Name in [`ReportData::images`].
    pub image: String,
    /// Caption, as entered.
    pub caption: String,
}

/// A JPEG, PNG, GIF or WebP under a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedImage {
    /// Its name; any text.
    pub name: String,
    /// The file's bytes.
    pub bytes: Vec<u8>,
}

/// One reading of a panel.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Day it was taken.
    pub date: Option<Date>,
    /// The map, drawn by the report.
    pub map: Option<Map>,
    /// Photo of the panel from the reading position, a name in [`ReportData::images`].
    pub photo: Option<String>,
    /// Lows and highs, deepest first.
    pub spots: Vec<Spot>,
    /// Finish verdict.
    pub finish: Finish,
    /// Share of the mirrored area that was read, 0 to 1.
    pub read_fraction: f64,
    /// Whether millimetres are absolute (true) or relative.
    pub absolute: bool,
    /// What could not be read.
    pub unread: Vec<Unread>,
    /// Remarks of the reading.
    pub notes: Vec<Note>,
    /// Frames of the capture.
    pub frames: Vec<Frame>,
    /// Where the camera's constants came from, as written in the reading.
    pub camera: String,
    /// Version of the program that made the reading.
    pub version: String,
    /// Settings of the reading, name and value.
    pub settings: Vec<(String, String)>,
    /// What the metal holds, where somebody asked.
    pub metal: Option<MetalState>,
}

/// What the metal holds; every number is an estimate with its doubt.
#[derive(Debug, Clone, PartialEq)]
pub struct MetalState {
    /// Code of the metal on file.
    pub sheet: String,
    /// Thickness taken, lowest and highest, mm.
    pub thickness_mm: [f64; 2],
    /// Where the sheet would spring back if let go: its largest stress as a share of what it takes for good.
    pub held: Option<f64>,
    /// Largest stretch as a share, and its doubt.
    pub stretch: Option<[f64; 2]>,
    /// Largest bending strain that stays on a face, and its doubt.
    pub bent: Option<[f64; 2]>,
    /// Largest pull, MPa, and its doubt.
    pub pulled: Option<[f64; 2]>,
    /// Largest pressure in the plane, MPa, positive, and its doubt.
    pub pressed: Option<[f64; 2]>,
    /// Whether a crown holds the low beside it.
    pub crown: bool,
    /// Whether it oil-cans as it is, and if brought level.
    pub oil_can: [Option<OilCan>; 2],
    /// Map of the stretch, shares in place of millimetres.
    pub stretch_map: Option<Map>,
    /// Map of the tension, MPa in place of millimetres.
    pub tension_map: Option<Map>,
}

/// Whether the sheet pops.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OilCan {
    /// Whether it stays where it is.
    pub stable: bool,
    /// Force at which it pops, N, its doubt, and whether it stays popped.
    pub pops: Option<([f64; 2], bool)>,
}

/// Deviation from the intended shape on a grid, row 0 at `y0_mm`, rows going up.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    /// x of the first column, mm.
    pub x0_mm: f64,
    /// y of the first row, mm.
    pub y0_mm: f64,
    /// Distance of columns and of rows, mm.
    pub step_mm: f64,
    /// Columns.
    pub nx: usize,
    /// Rows.
    pub ny: usize,
    /// `ny` rows of `nx` values, mm, positive = high, NaN where not read.
    pub deviation_mm: Vec<f32>,
}

/// A low or a high of a reading, in the frame of its map.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// Centre, mm.
    pub x_mm: f64,
    /// Centre, mm.
    pub y_mm: f64,
    /// Height, mm; negative for a low.
    pub height_mm: f64,
    /// One standard deviation of the height, mm.
    pub sigma_mm: f64,
    /// Longer way across, mm.
    pub length_mm: f64,
    /// Shorter way across, mm.
    pub width_mm: f64,
    /// Turn of the longer way from the x axis, degrees, counter-clockwise.
    pub angle_deg: f64,
    /// Where part of it was too steep to read: it goes at least this far, mm; negative for a low.
    pub at_least_mm: Option<f64>,
}

/// Whether the panel is finished.
#[derive(Debug, Clone, PartialEq)]
pub struct Finish {
    /// What it was judged against, mm.
    pub limit_mm: f64,
    /// The verdict.
    pub verdict: Verdict,
    /// Why, as written in the reading.
    pub reason: String,
}

/// A finish verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    /// Everything is within the limit, doubt counted.
    #[serde(rename = "done")]
    Done,
    /// Something is past the limit, doubt counted.
    #[serde(rename = "not done")]
    NotDone,
    /// The doubt is too large, or too little was read.
    #[serde(rename = "cannot tell")]
    CannotTell,
}

/// A part of the panel that was not read.
#[derive(Debug, Clone, PartialEq)]
pub struct Unread {
    /// `not_mirrored`, `tag`, `clipped`, `low_contrast`, `folded` or `inconsistent`.
    pub code: String,
    /// Share of the panel, 0 to 1.
    pub fraction: f64,
    /// Why, as written in the reading: shown where the code is not known here.
    pub text: String,
    /// What to do, as written in the reading: shown where the code is not known here.
    pub next: String,
}

/// A remark of a reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// Its code: a paper that is not English says it in its own words where it has them.
    pub code: String,
    /// As the reading says it, in English.
    pub text: String,
}

/// A photo of the capture and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frame {
    /// File name.
    pub file: String,
    /// Role, such as `setup` or `pattern`.
    pub role: String,
    /// Used (true) or dropped.
    pub used: bool,
    /// Why it was dropped, or a remark.
    pub note: String,
}
