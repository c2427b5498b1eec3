//! Elements in order, into memory.

use quick_xml::Writer;
use quick_xml::events::{BytesDecl, BytesEnd, BytesStart, BytesText, Event};
use rust_decimal::Decimal;

/// An XML document being written. Elements without a value are left out by [`Xml::leaf`].
pub(crate) struct Xml {
    writer: Writer<Vec<u8>>,
    open: Vec<&'static str>,
}

impl Xml {
    /// Begins a document with its root.
    pub(crate) fn new(root: &'static str, namespaces: &[(&str, &str)]) -> Self {
        let mut xml = Self { writer: Writer::new_with_indent(Vec::new(), b' ', 1), open: Vec::new() };
        xml.put(Event::Decl(BytesDecl::new("1.0", Some("UTF-8"), None)));
        xml.open_with(root, namespaces);
        xml
    }

    /// Writes an element with what `inside` writes.
    pub(crate) fn group(&mut self, name: &'static str, inside: impl FnOnce(&mut Self)) {
        self.open_with(name, &[]);
        inside(self);
        self.close();
    }

    /// Writes a value; nothing where it is empty.
    pub(crate) fn leaf(&mut self, name: &'static str, value: &str) {
        self.leaf_with(name, &[], value);
    }

    /// Writes a value with attributes; nothing where it is empty.
    pub(crate) fn leaf_with(&mut self, name: &'static str, attributes: &[(&str, &str)], value: &str) {
        let value = clean(value);
        let value = value.trim();
        if value.is_empty() {
            return;
        }
        let mut start = BytesStart::new(name);
        start.extend_attributes(attributes.iter().copied());
        self.put(Event::Start(start));
        self.put(Event::Text(BytesText::new(value)));
        self.put(Event::End(BytesEnd::new(name)));
    }

    /// Closes everything.
    pub(crate) fn finish(mut self) -> Vec<u8> {
        while !self.open.is_empty() {
            self.close();
        }
        let mut bytes = self.writer.into_inner();
        bytes.push(b'\n');
        bytes
    }

    fn open_with(&mut self, name: &'static str, attributes: &[(&str, &str)]) {
        let mut start = BytesStart::new(name);
        start.extend_attributes(attributes.iter().copied());
        self.put(Event::Start(start));
        self.open.push(name);
    }

    fn close(&mut self) {
        if let Some(name) = self.open.pop() {
            self.put(Event::End(BytesEnd::new(name)));
        }
    }

    fn put(&mut self, event: Event) {
        self.writer.write_event(event).expect("memory takes every write");
    }
}

/// Characters that XML 1.0 has no way to write become spaces.
fn clean(text: &str) -> String {
    let allowed =
        |c: char| matches!(c, '\t' | '\n' | '\r' | ' '..='\u{d7ff}' | '\u{e000}'..='\u{fffd}' | '\u{10000}'..);
    text.chars().map(|c| if allowed(c) { c } else { ' ' }).collect()
}

/// A decimal without an exponent and without zeros at its end.
pub(crate) fn plain(value: Decimal) -> String {
    value.normalize().to_string()
}
