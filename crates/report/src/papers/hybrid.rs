//! The metadata by which a hybrid invoice is known: four values in the file's XMP, and the description of
//! their schema that PDF/A asks for (ISO 19005-3, 6.6.2.3). Typst attaches the file but cannot write these.
//!
//! The XMP is a plain stream in what typst writes. It is made longer in place, its length and the offsets
//! after it in the table of references are set anew; nothing else of the file changes.

/// Namespace of the values; Factur-X 1.0 and ZUGFeRD 2 share it.
const NAMESPACE: &str = "urn:factur-x:pdfa:CrossIndustryDocument:invoice:1p0#";
/// Name, what it holds, its value; the name of the attached file stands for an empty value.
const VALUES: [(&str, &str, &str); 4] = [
    ("DocumentType", "Type of the document", "INVOICE"),
    ("DocumentFileName", "Name of the attached file", ""),
    ("Version", "Version of the schema of the attached file", "1.0"),
    ("ConformanceLevel", "Profile of the attached file", "EN 16931"),
];

/// The file with the metadata; none where its XMP or its references are not of the form that typst writes.
pub(crate) fn marked(pdf: &[u8], file: &str) -> Option<Vec<u8>> {
    let schemas_end = find(pdf, b"</rdf:Bag></pdfaExtension:schemas>")?;
    let rdf_end = find(pdf, b"</rdf:RDF></x:xmpmeta>").filter(|end| *end > schemas_end)?;
    let (schema, values) = (schema(), values(file));
    let (length_at, length) = length(pdf, schemas_end)?;
    let longer = (length.parse::<usize>().ok()? + schema.len() + values.len()).to_string();

    let mut edits = Edits { pdf, at: 0, made: Vec::with_capacity(pdf.len() + 4000) };
    edits.until(length_at);
    edits.put(longer.as_bytes(), length.len());
    edits.until(schemas_end);
    edits.put(schema.as_bytes(), 0);
    edits.until(rdf_end);
    edits.put(values.as_bytes(), 0);
    let table = rfind(pdf, b"\nxref\n").filter(|table| *table > rdf_end)? + 1;
    let moved = longer.len() - length.len() + schema.len() + values.len();
    edits.until(table);
    edits.made.extend(references(&pdf[table..], rdf_end, moved)?);
    Some(edits.made)
}

/// A file being copied with changes.
struct Edits<'a> {
    pdf: &'a [u8],
    at: usize,
    made: Vec<u8>,
}

impl Edits<'_> {
    fn until(&mut self, end: usize) {
        self.made.extend(&self.pdf[self.at..end]);
        self.at = end;
    }

    /// Puts bytes in the place of `instead` others.
    fn put(&mut self, bytes: &[u8], instead: usize) {
        self.made.extend(bytes);
        self.at += instead;
    }
}

/// Where the length of the XMP stream stands, and its digits.
fn length(pdf: &[u8], inside: usize) -> Option<(usize, &str)> {
    let object = rfind(&pdf[..inside], b" 0 obj\n")?;
    let at = object + find(&pdf[object..inside], b"/Length ")? + b"/Length ".len();
    let end = at + pdf[at..].iter().position(|byte| !byte.is_ascii_digit())?;
    Some((at, std::str::from_utf8(&pdf[at..end]).ok()?))
}

/// The table of references and the trailer, with what lies after `edge` moved.
fn references(tail: &[u8], edge: usize, moved: usize) -> Option<Vec<u8>> {
    let tail = std::str::from_utf8(tail).ok()?;
    let (table, trailer) = tail.split_at(tail.find("trailer")?);
    let (trailer, start) = trailer.split_at(trailer.rfind("startxref\n")? + "startxref\n".len());
    let (start, end) = start.split_at(start.find('\n')?);
    let mut text = String::with_capacity(tail.len() + 8);
    for line in table.split_inclusive('\n') {
        match line.get(..10).and_then(|digits| digits.parse::<usize>().ok()) {
            Some(offset) if line.trim_end().ends_with(" n") && offset > edge => {
                text += &format!("{:010}{}", offset + moved, &line[10..]);
            }
            _ => text += line,
        }
    }
    let start: usize = start.parse().ok()?;
    Some(format!("{text}{trailer}{}{end}", start + moved).into_bytes())
}

fn schema() -> String {
    let property = |(name, what, _): &(&str, &str, &str)| {
        format!(
            "<rdf:li rdf:parseType=\"Resource\"><pdfaProperty:category>external</pdfaProperty:category>\
             <pdfaProperty:description>{what}</pdfaProperty:description><pdfaProperty:name>{name}</pdfaProperty:name>\
             <pdfaProperty:valueType>Text</pdfaProperty:valueType></rdf:li>"
        )
    };
    let properties: String = VALUES.iter().map(property).collect();
    format!(
        "<rdf:li rdf:parseType=\"Resource\"><pdfaSchema:schema>Hybrid invoice</pdfaSchema:schema>\
         <pdfaSchema:namespaceURI>{NAMESPACE}</pdfaSchema:namespaceURI><pdfaSchema:prefix>fx</pdfaSchema:prefix>\
         <pdfaSchema:property><rdf:Seq>{properties}</rdf:Seq></pdfaSchema:property></rdf:li>"
    )
}

fn values(file: &str) -> String {
    let value = |(name, _, value): &(&str, &str, &str)| {
        format!("<fx:{name}>{}</fx:{name}>", if value.is_empty() { file } else { value })
    };
    let values: String = VALUES.iter().map(value).collect();
    format!("<rdf:Description rdf:about=\"\" xmlns:fx=\"{NAMESPACE}\">{values}</rdf:Description>")
}

fn find(bytes: &[u8], wanted: &[u8]) -> Option<usize> {
    bytes.windows(wanted.len()).position(|window| window == wanted)
}

fn rfind(bytes: &[u8], wanted: &[u8]) -> Option<usize> {
    bytes.windows(wanted.len()).rposition(|window| window == wanted)
}
