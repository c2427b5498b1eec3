//! A kept reading in the forms of other programs. What a general-purpose reader says of the same files is kept in
//! tests/reference (`export.py`).

use dentwright_flow::{Form, KeptReading, READING_FOLDER, ReadSettings, export, pack, read, write_reading};
use dentwright_scene::recipes;
use dentwright_surface::{npy_f32, npy_u8};
use std::path::Path;
use std::sync::atomic::AtomicBool;

fn reading(out: &Path) -> KeptReading {
    let folder = tempfile::tempdir().unwrap();
    recipes::named("demo_door_round_2").unwrap().shrunk(2).render().unwrap().write_photos(folder.path()).unwrap();
    let reading = read(folder.path(), &ReadSettings::default(), &|_| {}, &AtomicBool::new(false)).unwrap();
    write_reading(&reading, out).unwrap();
    KeptReading::open(out).unwrap()
}

#[test]
fn every_form_holds_the_surface_and_a_zip_opens_again() {
    let out = tempfile::tempdir().unwrap();
    let folder = out.path().join("reading");
    let kept = reading(&folder);
    let read = kept.height.values.iter().filter(|v| v.is_finite()).count();

    let ply = export(&kept, Form::Ply).unwrap();
    let head = String::from_utf8_lossy(&ply[..400]).into_owned();
    let (head, _) = head.split_once("end_header\n").unwrap();
    let count = |what: &str| -> usize {
        head.lines().find_map(|l| l.strip_prefix(&format!("element {what} "))).unwrap().parse().unwrap()
    };
    assert_eq!(count("vertex"), read);
    assert_eq!(ply.len(), head.len() + 11 + 20 * count("vertex") + 13 * count("face"));

    let stl = export(&kept, Form::Stl).unwrap();
    let triangles = u32::from_le_bytes([stl[80], stl[81], stl[82], stl[83]]) as usize;
    assert_eq!((triangles, stl.len()), (count("face"), 84 + 50 * triangles));
    // Outward is up: the panel faces the viewer.
    let up = |k: usize| f32::from_le_bytes(stl[84 + 50 * k + 8..84 + 50 * k + 12].try_into().unwrap());
    assert!((0..triangles).all(|k| up(k) > 0.5));

    let csv = String::from_utf8(export(&kept, Form::Csv).unwrap()).unwrap();
    assert_eq!(csv.lines().count(), read + 1);
    let svg = String::from_utf8(export(&kept, Form::Svg).unwrap()).unwrap();
    assert!(svg.contains("data:image/png;base64,iVBOR") && svg.matches("<ellipse").count() == kept.file.spots.len());
    assert_eq!(&export(&kept, Form::Png).unwrap()[..8], b"\x89PNG\r\n\x1a\n");

    let files: Vec<(String, Vec<u8>)> = ["reading.json", "deviation.npy", "height.npy", "sigma.npy", "unread.npy"]
        .map(|name| (name.to_owned(), std::fs::read(folder.join(name)).unwrap()))
        .into();
    let zip = out.path().join("reading.zip");
    std::fs::write(&zip, pack(&files, &[]).unwrap()).unwrap();
    let again = KeptReading::open(&zip).unwrap();
    let bits = |m: &dentwright_surface::Map| m.values.iter().map(|v| v.to_bits()).collect::<Vec<_>>();
    assert_eq!(bits(&again.deviation), bits(&kept.deviation));
    assert!(!READING_FOLDER.is_empty() && KeptReading::open(&folder.join("map.png")).is_err());
    std::fs::write(folder.join("sigma.npy"), b"nothing").unwrap();
    assert!(KeptReading::open(&folder).unwrap_err().to_string().contains("sigma.npy"));
}

#[test]
fn x3p_has_its_parts_and_check_sums() {
    let out = tempfile::tempdir().unwrap();
    let kept = reading(&out.path().join("reading"));
    let bytes = export(&kept, Form::X3p).unwrap();
    let mut zip = zip::ZipArchive::new(std::io::Cursor::new(bytes)).unwrap();
    let mut part = |name: &str| {
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut zip.by_name(name).unwrap(), &mut bytes).unwrap();
        bytes
    };
    let (main, data) = (String::from_utf8(part("main.xml")).unwrap(), part("bindata/data.bin"));
    assert_eq!(data.len(), 8 * kept.height.grid.len());
    assert!(main.contains(&format!("<SizeX>{}</SizeX>", kept.height.grid.nx)));
    let first = kept.height.values.iter().position(|v| v.is_finite()).unwrap();
    let metres = f64::from_le_bytes(data[8 * first..8 * first + 8].try_into().unwrap());
    assert!((metres - 1e-3 * f64::from(kept.height.values[first])).abs() < 1e-12);
    assert!(String::from_utf8(part("md5checksum.hex")).unwrap().ends_with(" *main.xml\n"));
}

/// A reading of 7 by 5 cells of 2 mm: a tilted bowl with a hole of two cells.
fn small() -> KeptReading {
    let json = serde_json::json!({
        "panel_tags": [], "grid": { "x0_mm": -6.0, "y0_mm": 10.0, "step_mm": 2.0, "nx": 7, "ny": 5 },
        "maps": { "deviation": "d", "height": "h", "sigma": "s", "unread": "u" }, "spots": [],
        "photo": { "file": "", "width_px": 1, "height_px": 1 }, "read_fraction": 0.9, "scale": "absolute",
        "finish": { "limit_mm": 0.01, "verdict": "done", "reason": "" }, "unread": [], "notes": [],
        "camera": { "focal_px": 1.0, "k1": 0.0, "source": "", "gamma": 1.0, "corner_rms_px": 0.0, "board_median_mm": 0.0 },
        "frames": [], "version": "0.1.0", "settings": null
    });
    let hole = |k: usize| k == 17 || k == 18;
    let height = |k: usize| if hole(k) { f32::NAN } else { 0.25 * (k % 7) as f32 - 0.125 * (k / 7) as f32 };
    let map = |f: &dyn Fn(usize) -> f32| npy_f32(&[5, 7], &(0..35).map(f).collect::<Vec<f32>>());
    KeptReading::of(|name| {
        Ok(match name {
            "reading.json" => json.to_string().into_bytes(),
            "h" => map(&height),
            "d" => map(&|k| if hole(k) { f32::NAN } else { 0.001 * k as f32 }),
            "s" => map(&|k| if hole(k) { f32::NAN } else { 0.0005 }),
            _ => npy_u8(&[5, 7], &[0; 35]),
        })
    })
    .unwrap()
}

#[test]
fn files_are_those_that_other_programs_have_read() {
    // `export.py` beside the files says what trimesh and surfalize read in them. DENTWRIGHT_ACCEPT=1 writes them anew.
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference");
    for form in [Form::Ply, Form::Stl, Form::X3p] {
        let path = folder.join(format!("export_small.{}", form.ending()));
        let bytes = export(&small(), form).unwrap();
        if std::env::var_os("DENTWRIGHT_ACCEPT").is_some() {
            std::fs::write(&path, &bytes).unwrap();
        }
        let there = std::fs::read(&path).unwrap();
        if form == Form::X3p {
            assert_eq!(parts(&bytes), parts(&there));
        } else {
            assert!(bytes == there, "{} differs", path.display());
        }
    }
}

fn parts(x3p: &[u8]) -> Vec<Vec<u8>> {
    let mut zip = zip::ZipArchive::new(std::io::Cursor::new(x3p)).unwrap();
    let part = |name: &str| {
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut zip.by_name(name).unwrap(), &mut bytes).unwrap();
        bytes
    };
    ["main.xml", "bindata/data.bin", "md5checksum.hex"].map(part).into()
}
