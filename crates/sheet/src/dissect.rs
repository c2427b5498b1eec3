//! Order of elimination: the grid halved again and again, the strip between two halves last (nested
//! dissection, George 1973). Three nodes wide, the strip parts cubic splines completely.

use crate::stencil::Stencil;

/// Nodes along a side below which a piece is not halved further.
const LEAF: usize = 6;

/// One piece of the grid: what is eliminated there and what it leaves behind.
#[derive(Debug)]
pub struct Front {
    /// Nodes eliminated here, then the nodes around that are eliminated later.
    pub nodes: Vec<usize>,
    /// How many of them are eliminated here.
    pub pivots: usize,
    /// Entries of the stiffness that enter here.
    pub entries: Vec<Entry>,
    /// The two halves, each with the places of its remaining nodes among `nodes`.
    pub halves: Vec<(Front, Vec<u32>)>,
}

/// One block of the stiffness where it enters a front.
#[derive(Debug)]
pub struct Entry {
    /// Row among the front's nodes.
    pub row: u32,
    /// Column among them, not after the row.
    pub column: u32,
    /// Index of the block in the stencil.
    pub index: u32,
    /// Whether the stencil keeps its mirror image.
    pub turned: bool,
}

#[derive(Clone, Copy)]
struct Piece {
    x: [usize; 2],
    y: [usize; 2],
}

impl Front {
    /// Order of elimination of the nodes marked `active`.
    pub fn new(stencil: &Stencil, active: &[bool]) -> Self {
        let whole = Piece { x: [0, stencil.nx], y: [0, stencil.ny] };
        let mut place = vec![u32::MAX; active.len()];
        build(stencil, active, whole, &mut place)
    }
}

fn build(stencil: &Stencil, active: &[bool], piece: Piece, place: &mut [u32]) -> Front {
    let (wide, high) = (piece.x[1] - piece.x[0], piece.y[1] - piece.y[0]);
    let mut parts = Vec::new();
    let mut strip = piece;
    if wide.max(high) > LEAF {
        let (mut low, mut top) = (piece, piece);
        if wide >= high {
            let middle = piece.x[0] + (wide - 3) / 2;
            (low.x[1], strip.x, top.x[0]) = (middle, [middle, middle + 3], middle + 3);
        } else {
            let middle = piece.y[0] + (high - 3) / 2;
            (low.y[1], strip.y, top.y[0]) = (middle, [middle, middle + 3], middle + 3);
        }
        parts = vec![build(stencil, active, low, place), build(stencil, active, top, place)];
    }
    let around = Piece {
        x: [piece.x[0].saturating_sub(3), (piece.x[1] + 3).min(stencil.nx)],
        y: [piece.y[0].saturating_sub(3), (piece.y[1] + 3).min(stencil.ny)],
    };
    let ny = stencil.ny;
    let mut nodes: Vec<usize> = every(strip, ny).filter(|n| active[*n]).collect();
    let pivots = nodes.len();
    nodes.extend(every(around, ny).filter(|n| active[*n] && !holds(piece, *n, ny)));

    for (i, node) in nodes.iter().enumerate() {
        place[*node] = i as u32;
    }
    let mut entries = Vec::new();
    for (column, node) in nodes[..pivots].iter().enumerate() {
        for row_node in stencil.neighbours(*node) {
            let row = place[row_node];
            if row != u32::MAX && row as usize >= column {
                let turned = row_node < *node;
                let (after, before) = if turned { (*node, row_node) } else { (row_node, *node) };
                let index = stencil.index(after, before).expect("neighbours touch") as u32;
                entries.push(Entry { row, column: column as u32, index, turned });
            }
        }
    }
    let halves = parts
        .into_iter()
        .map(|half| {
            let places = half.nodes[half.pivots..].iter().map(|n| place[*n]).collect();
            (half, places)
        })
        .collect();
    for node in &nodes {
        place[*node] = u32::MAX;
    }
    Front { nodes, pivots, entries, halves }
}

fn every(piece: Piece, ny: usize) -> impl Iterator<Item = usize> {
    (piece.x[0]..piece.x[1]).flat_map(move |x| (piece.y[0]..piece.y[1]).map(move |y| x * ny + y))
}

fn holds(piece: Piece, node: usize, ny: usize) -> bool {
    let (x, y) = (node / ny, node % ny);
    (piece.x[0]..piece.x[1]).contains(&x) && (piece.y[0]..piece.y[1]).contains(&y)
}
