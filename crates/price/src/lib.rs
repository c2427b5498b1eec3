//! Hours, rates, lines, uplifts and tax: a quote.
