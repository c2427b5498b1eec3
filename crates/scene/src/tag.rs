//! Tags of the family 36h11: which of their modules are white.
//!
//! Source of the code words and of the order of the bits: `tag36h11.c` of the AprilTag library, Copyright 2013-2016
//! The Regents of The University of Michigan, two-clause BSD licence. The first 64 of its 587 words.

/// Modules along a side with the black border, without the white surround.
pub const MODULES: i32 = 8;

/// Whether a place on a tag is white. `right` and `up` are measured from the tag's centre in sides of its black
/// square; outside the square all is white.
#[must_use]
pub fn is_white(id: usize, right: f64, up: f64) -> bool {
    let module = |at: f64| ((at + 0.5) * f64::from(MODULES)).floor() as i32;
    // Half a turn against the library's own drawing: the way up that OpenCV's marker sheets have.
    let (column, row) = (module(-right), module(up));
    let inside = |m: i32, rim: i32| (rim..MODULES - rim).contains(&m);
    if !inside(column, 0) || !inside(row, 0) {
        return true;
    }
    if !inside(column, 1) || !inside(row, 1) {
        return false;
    }
    let bit = BITS.iter().position(|b| (i32::from(b.0), i32::from(b.1)) == (column, row));
    bit.is_some_and(|k| WORDS[id % WORDS.len()] >> (35 - k) & 1 == 1)
}

/// Column and row of every bit, the first being the word's highest.
const BITS: [(u8, u8); 36] = [
    (1, 1),
    (2, 1),
    (3, 1),
    (4, 1),
    (5, 1),
    (2, 2),
    (3, 2),
    (4, 2),
    (3, 3),
    (6, 1),
    (6, 2),
    (6, 3),
    (6, 4),
    (6, 5),
    (5, 2),
    (5, 3),
    (5, 4),
    (4, 3),
    (6, 6),
    (5, 6),
    (4, 6),
    (3, 6),
    (2, 6),
    (5, 5),
    (4, 5),
    (3, 5),
    (4, 4),
    (1, 6),
    (1, 5),
    (1, 4),
    (1, 3),
    (1, 2),
    (2, 5),
    (2, 4),
    (2, 3),
    (3, 4),
];

const WORDS: [u64; 64] = [
    0xd_7e00_984b,
    0xd_da66_4ca7,
    0xd_c4a1_c821,
    0xe_17b4_70e9,
    0xe_f91d_01b1,
    0xf_429c_dd73,
    0x0_5da2_9225,
    0x1_106c_ba43,
    0x2_23be_d79d,
    0x2_1f51_213c,
    0x3_3eb1_9ca6,
    0x3_f76e_b0f8,
    0x4_69a9_7414,
    0x4_5dcf_e0b0,
    0x4_a646_5f72,
    0x5_1801_db96,
    0x5_eb94_6b4e,
    0x6_8a7c_c2ec,
    0x6_f0ba_2652,
    0x7_8765_559d,
    0x8_7b83_d129,
    0x8_6cc4_a5c5,
    0x8_b64d_f90f,
    0x9_c577_b611,
    0xa_3810_f2f5,
    0xa_f4d7_5b83,
    0xb_59a0_3fef,
    0xb_b109_6f85,
    0xd_1b92_fc76,
    0xd_0dd5_09d2,
    0xe_2cfd_a160,
    0x2_ff49_7c63,
    0x4_7240_671b,
    0x5_047a_2e55,
    0x6_35ca_87c7,
    0x6_9125_4166,
    0x6_8f43_d94a,
    0x6_ef24_bdb6,
    0x8_cdd8_f886,
    0x9_de96_b718,
    0xa_ff6e_5a8a,
    0xb_ae46_f029,
    0xd_225b_6d59,
    0xd_f8ba_8c01,
    0xe_3744_a22f,
    0xf_bb59_375d,
    0x1_8a91_6828,
    0x2_2f29_c1ba,
    0x2_8688_7d58,
    0x4_1392_322e,
    0x7_5d18_ecd1,
    0x8_7c30_2743,
    0x8_c631_7ba9,
    0x9_e40f_36d7,
    0xc_0e5a_806a,
    0xc_c78c_b87c,
    0x1_2d2f_2d01,
    0x3_79f3_6a21,
    0x6_973f_59ac,
    0x7_789e_a9f4,
    0x8_f1c7_3e84,
    0x8_dd28_7a20,
    0x9_4a4e_ee4c,
    0xa_4553_79b5,
];
