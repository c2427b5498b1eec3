//! A report's values, all invented: no such people, shop or car exist.

#[allow(dead_code, reason = "the report's own sample does without")]
pub mod papers;

use dentwright_price::*;
use dentwright_report::*;
use jiff::civil::date;

/// A job with one measured and one hand-entered damage and everything that a report can show.
pub fn sample(language: Language, length_unit: LengthUnit, paper: Paper) -> ReportData {
    ReportData {
        language,
        length_unit,
        paper,
        date: date(2026, 11, 25),
        number: "2026-0117".into(),
        shop: Shop {
            name: "Line & Light Dent Repair".into(),
            address: "Unit 4, Harbour Row\n10999 Invented Town".into(),
            phone: "+00 555 0101".into(),
            email: "shop@example.org".into(),
            tax_id: "XX 123 456 789".into(),
        },
        customer: Customer {
            name: "Mara Invented".into(),
            address: "12 Example Street\n10998 Invented Town".into(),
            phone: "+00 555 0134".into(),
            email: "mara@example.org".into(),
        },
        car: Car {
            title: "Exempla Tourer, estate".into(),
            year: Some(2021),
            plate: "IT-ML 417".into(),
            vin: "1M8GDM9AXKP042788".into(),
            vin_note: String::new(),
            colour: "Harbour blue, metallic".into(),
            paint: "clear coat over metallic, 118 µm".into(),
            odometer_km: Some(64_310),
        },
        damages: vec![door(), roof()],
        quote: Some(sample_quote()),
        cautions: CAUTION_CODES.map(str::to_owned).to_vec(),
        notes: "Old scratch on the rear bumper agreed with the customer, not part of this job.".into(),
        images: vec![
            NamedImage { name: "door photo".into(), bytes: photo(900, 600) },
            NamedImage { name: "panel".into(), bytes: photo(800, 600) },
            NamedImage { name: "roof".into(), bytes: photo(600, 600) },
        ],
    }
}

fn dent(kind: Kind, length_mm: f64, width_mm: f64, depth_mm: f64, count: u32) -> Dent {
    Dent {
        kind,
        length_mm,
        width_mm,
        depth_mm,
        metal: Metal::Steel,
        access: Access::TrimOff,
        place: Place::Flat,
        sharpness: None,
        count,
    }
}

fn door() -> Damage {
    let measured = |dent, sigma_mm| DentRow { dent, sigma_mm: Some(sigma_mm), measured: true, at_least: false };
    Damage {
        panel: "front_door_left".into(),
        at: (0.6, 0.45),
        note: "Two dings from a car park, one of them close to the body line.".into(),
        dents: vec![
            measured(dent(Kind::Round, 31.0, 27.0, 0.412, 1), 0.0011),
            measured(Dent { place: Place::BodyLine, ..dent(Kind::Sharp, 22.0, 14.0, 0.268, 1) }, 0.0014),
            measured(dent(Kind::High, 12.0, 11.0, 0.034, 1), 0.0009),
        ],
        photos: vec![Photo { image: "door photo".into(), caption: "As taken in".into() }],
        readings: vec![reading()],
        change: Some(change()),
    }
}

fn roof() -> Damage {
    let by_hand = |dent| DentRow { dent, sigma_mm: None, measured: false, at_least: false };
    let aluminium = |dent| Dent { metal: Metal::Aluminium, ..dent };
    Damage {
        panel: "roof".into(),
        at: (0.4, 0.4),
        note: String::new(),
        dents: vec![
            by_hand(aluminium(dent(Kind::Hail, 15.0, 15.0, 0.4, 46))),
            by_hand(aluminium(dent(Kind::Hail, 25.0, 25.0, 0.8, 7))),
            by_hand(Dent { place: Place::Edge, access: Access::GlueOnly, ..dent(Kind::Soft, 60.0, 35.0, 1.1, 1) }),
        ],
        photos: vec![
            Photo { image: "roof".into(), caption: "Roof under the line board".into() },
            Photo { image: "not there".into(), caption: "Roof from behind".into() },
        ],
        readings: vec![],
        change: None,
    }
}

fn change() -> Change {
    let spots = reading().spots;
    let step = |(day, share): (i8, f32)| {
        let all = map(&spots);
        let deviation_mm = all.deviation_mm.iter().map(|v| share * v).collect();
        SeriesStep {
            date: Some(date(2026, 11, day)),
            map: Some(Map { deviation_mm, ..all }),
            largest_mm: -0.412 * f64::from(share),
            sigma_mm: 0.0011,
            volume_mm3: 290.0 * f64::from(share),
            volume_sigma_mm3: 1.2,
        }
    };
    let worked = |better, before_mm: f64, after_mm: f64| Worked {
        better,
        before_mm,
        after_mm,
        change_mm: after_mm - before_mm,
        sigma_mm: 0.0014,
    };
    Change {
        map: Some(map(&spots)),
        by_tags: true,
        worked: vec![worked(true, -0.412, -0.006), worked(false, 0.001, 0.022)],
        raised_mm3: (287.0, 1.6),
        lowered_mm3: (4.1, 0.5),
        series: [(24, 1.0), (25, 0.3), (26, 0.01)].map(step).into(),
    }
}

fn reading() -> Reading {
    let spot = |(x_mm, y_mm, height_mm, length_mm, width_mm, angle_deg)| Spot {
        x_mm,
        y_mm,
        height_mm,
        sigma_mm: 0.0011,
        length_mm,
        width_mm,
        angle_deg,
        at_least_mm: None,
    };
    let spots: Vec<Spot> = SPOTS.into_iter().map(spot).collect();
    let frame = |index: usize| Frame {
        file: format!("screen_{index}.jpg"),
        role: "pattern".into(),
        used: index != 11,
        note: if index == 11 { "moved 3 px against the others".into() } else { String::new() },
    };
    Reading {
        metal: Some(metal()),
        date: Some(date(2026, 11, 24)),
        map: Some(map(&spots)),
        photo: Some("panel".into()),
        spots,
        finish: Finish {
            limit_mm: 0.005,
            verdict: Verdict::NotDone,
            reason: "The deepest low is 412 µm ± 2 µm deep.".into(),
        },
        read_fraction: 0.973,
        absolute: true,
        unread: vec![
            Unread { code: "tag".into(), fraction: 0.021, text: String::new(), next: String::new() },
            Unread { code: "folded".into(), fraction: 0.006, text: String::new(), next: String::new() },
        ],
        notes: vec![Note {
            code: "camera_exif".into(),
            text: "the focal length came from the photo and was refined".into(),
        }],
        frames: (0..26).map(frame).collect(),
        camera: "focal length 3120 px, from EXIF and refined".into(),
        version: "dentwright 0.1.0".into(),
        settings: vec![("step_mm".into(), "0.5".into()), ("finish_limit_um".into(), "5".into())],
    }
}

/// x, y, height, length, width (mm), turn (degrees).
const SPOTS: [(f64, f64, f64, f64, f64, f64); 3] = [
    (-42.0, 18.0, -0.412, 31.0, 27.0, 10.0),
    (38.0, -22.0, -0.268, 22.0, 14.0, 35.0),
    (21.0, 30.0, 0.034, 12.0, 11.0, 0.0),
];

/// The spots as Gaussian hills and hollows on 240 × 150 mm, with a corner and a tag unread.
fn map(spots: &[Spot]) -> Map {
    let (nx, ny, step_mm, x0_mm, y0_mm) = (480, 300, 0.5, -120.0, -75.0);
    let height_mm = |x_mm: f64, y_mm: f64| -> f64 {
        let of_spot = |spot: &Spot| {
            let (sin, cos) = spot.angle_deg.to_radians().sin_cos();
            let (dx, dy) = (x_mm - spot.x_mm, y_mm - spot.y_mm);
            let (u, v) = (dx * cos + dy * sin, dy * cos - dx * sin);
            let away = (u / spot.length_mm).powi(2) + (v / spot.width_mm).powi(2);
            spot.height_mm * (-6.0 * away).exp()
        };
        spots.iter().map(of_spot).sum()
    };
    let cell = |index: usize| {
        let (x_mm, y_mm) = (x0_mm + step_mm * (index % nx) as f64, y0_mm + step_mm * (index / nx) as f64);
        let tag = (x_mm - 84.0).abs() < 12.0 && (y_mm - 48.0).abs() < 12.0;
        let corner = x_mm + y_mm < -165.0;
        if tag || corner { f32::NAN } else { height_mm(x_mm, y_mm) as f32 }
    };
    Map { x0_mm, y0_mm, step_mm, nx, ny, deviation_mm: (0..nx * ny).map(cell).collect() }
}

fn sample_quote() -> Quote {
    let quoted = |panel: &str, row: &DentRow| QuotedDent {
        what: format!("{panel}: {:.0} × {:.0} mm", row.dent.length_mm, row.dent.width_mm),
        dent: row.dent.clone(),
    };
    let (door, roof) = (door(), roof());
    let of_door = door.dents.iter().map(|row| quoted("Front door, left", row));
    let dents = of_door.chain(roof.dents.iter().map(|row| quoted("Roof", row)));
    let input = QuoteInput {
        dents: dents.collect(),
        pricing: Pricing {
            ri_lines: vec![
                RiLine { what: "headlining, lowered".into(), charge: Charge::Hours("2.5".parse().unwrap()) },
                RiLine { what: "door card".into(), charge: Charge::Hours("0.6".parse().unwrap()) },
            ],
            uplifts: vec![Uplift {
                what: "Work outdoors".into(),
                percent: "10".parse().unwrap(),
                on: UpliftOn::Labour,
            }],
            parts: vec![Part {
                what: "Clips".into(),
                quantity: "6".parse().unwrap(),
                unit_price: "1.35".parse().unwrap(),
            }],
            sundries: vec![Sundry { what: "Cavity wax".into(), amount: "14.00".parse().unwrap() }],
            discount: Some(Discount::Percent("3".parse().unwrap())),
            ..Pricing::new("95.00".parse().unwrap(), "19".parse().unwrap(), "EUR")
        },
    };
    quote(&input, &Learned::start(&HoursSettings::default()).unwrap(), None).unwrap()
}

/// A drawn stand-in for a photo: lines mirrored in a panel with a dent.
fn photo(width: u32, height: u32) -> Vec<u8> {
    let pixel = |x: u32, y: u32| {
        let (u, v) = (f64::from(x) / f64::from(width) - 0.55, f64::from(y) / f64::from(height) - 0.45);
        let bend = 0.05 * (-(u * u + v * v) * 60.0).exp() * u.signum();
        let line = (((u + bend) * 70.0 + v * 6.0).sin() * 0.5 + 0.5).powi(2);
        let light = 60.0 + 150.0 * line;
        image::Rgb([(0.55 * light) as u8, (0.72 * light) as u8, (0.86 * light + 20.0) as u8])
    };
    let mut bytes = std::io::Cursor::new(Vec::new());
    image::RgbImage::from_fn(width, height, pixel).write_to(&mut bytes, image::ImageFormat::Jpeg).unwrap();
    bytes.into_inner()
}

/// What the metal of the sample holds.
fn metal() -> dentwright_report::MetalState {
    let grid = |most: f32, turn: f32| {
        let value = |i: usize| {
            let (x, y) = ((i % 41) as f32 - 20.0, (i / 41) as f32 - 20.0);
            let r2 = (x * x + y * y) / 60.0;
            most * (1.0 - turn * r2) * (-r2).exp()
        };
        let deviation_mm = (0..41 * 41).map(value).collect();
        Some(dentwright_report::Map { x0_mm: -30.0, y0_mm: -30.0, step_mm: 1.5, nx: 41, ny: 41, deviation_mm })
    };
    dentwright_report::MetalState {
        sheet: "steel_bh180_panel".into(),
        thickness_mm: [0.6, 0.85],
        held: None,
        stretch: Some([0.009, 0.003]),
        bent: Some([0.011, 0.003]),
        pulled: Some([62.0, 21.0]),
        pressed: Some([35.0, 12.0]),
        crown: true,
        oil_can: [
            Some(dentwright_report::OilCan { stable: true, pops: None }),
            Some(dentwright_report::OilCan { stable: true, pops: Some(([14.0, 5.0], true)) }),
        ],
        stretch_map: grid(0.009, 0.0),
        tension_map: grid(-35.0, 1.0),
    }
}
