//! What can be brought to a place, and how hard: from behind, or by a glued tab.

/// Force the best tool gives at a place from behind, N; none where nothing reaches.
pub type Behind<'a> = dyn Fn([f64; 2]) -> Option<f64> + Sync + 'a;
/// Force a tab of this radius holds, N; none where no tab may be glued on.
pub type Glue<'a> = dyn Fn(f64) -> Option<f64> + Sync + 'a;

/// Ways to a place.
#[derive(Clone, Copy)]
pub struct Ways<'a> {
    /// From behind.
    pub behind: &'a Behind<'a>,
    /// By glue, from the front.
    pub glue: &'a Glue<'a>,
}

impl Ways<'_> {
    /// Everything is reached from behind with any force; nothing is glued.
    #[must_use]
    pub fn open() -> Ways<'static> {
        Ways { behind: &|_| Some(f64::INFINITY), glue: &|_| None }
    }
}
