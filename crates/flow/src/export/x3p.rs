//! Heights on their grid as an X3P file (ISO 25178-72:2017): a zip of an XML description, the heights in binary, and
//! check sums. Metres, as the standard wants; NaN where nothing was read; rows run with y.

use super::md5::md5;
use dentwright_surface::Map;
use std::io::{Cursor, Write};
use zip::write::SimpleFileOptions;

const M_PER_MM: f64 = 1e-3;

/// The file's bytes. `version` is that of the program which made the reading.
pub(super) fn x3p(height: &Map, version: &str) -> zip::result::ZipResult<Vec<u8>> {
    let metres = |v: &f32| (f64::from(*v) * M_PER_MM).to_le_bytes();
    let data: Vec<u8> = height.values.iter().flat_map(metres).collect();
    let main = description(height, &md5(&data), version);
    let sums = format!("{} *main.xml\n", md5(main.as_bytes()));
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default();
    for (name, bytes) in
        [("main.xml", main.as_bytes()), ("bindata/data.bin", &data[..]), ("md5checksum.hex", sums.as_bytes())]
    {
        zip.start_file(name, options)?;
        zip.write_all(bytes)?;
    }
    Ok(zip.finish()?.into_inner())
}

fn description(height: &Map, sum: &str, version: &str) -> String {
    let grid = height.grid;
    let axis = |name: &str, offset_mm: f64| {
        let (step, offset) = (grid.step_mm * M_PER_MM, offset_mm * M_PER_MM);
        format!(
            "<{name}><AxisType>I</AxisType><DataType>D</DataType><Increment>{step:e}</Increment><Offset>{offset:e}</Offset></{name}>"
        )
    };
    let version: String = version.chars().filter(|c| c.is_ascii_alphanumeric() || ".-+".contains(*c)).collect();
    format!(
        r#"<?xml version="1.0" encoding="UTF-8" standalone="no"?>
<p:ISO5436_2 xmlns:p="http://www.opengps.eu/2008/ISO5436_2" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<Record1><Revision>ISO5436 - 2000</Revision><FeatureType>SUR</FeatureType><Axes>{}{}<CZ><AxisType>A</AxisType><DataType>D</DataType><Increment>1</Increment><Offset>0</Offset></CZ></Axes></Record1>
<Record2><Date>1970-01-01T00:00:00Z</Date><Instrument><Manufacturer>Dentwright</Manufacturer><Model>mirrored lines</Model><Serial>none</Serial><Version>{version}</Version></Instrument><CalibrationDate>1970-01-01T00:00:00Z</CalibrationDate><ProbingSystem><Type>NonContacting</Type><Identification>camera and board</Identification></ProbingSystem><Comment>Height of a panel in its own frame. Dates are not kept here.</Comment></Record2>
<Record3><MatrixDimension><SizeX>{}</SizeX><SizeY>{}</SizeY><SizeZ>1</SizeZ></MatrixDimension><DataLink><PointDataLink>bindata/data.bin</PointDataLink><MD5ChecksumPointData>{sum}</MD5ChecksumPointData></DataLink></Record3>
<Record4><ChecksumFile>md5checksum.hex</ChecksumFile></Record4>
</p:ISO5436_2>
"#,
        axis("CX", grid.x0_mm),
        axis("CY", grid.y0_mm),
        grid.nx,
        grid.ny
    )
}
