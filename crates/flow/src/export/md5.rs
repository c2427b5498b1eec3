//! MD5 (RFC 1321), which ISO 25178-72 asks for as a check sum. It protects against damage, not against forgers.

/// The digest as 32 hexadecimal digits.
pub(super) fn md5(bytes: &[u8]) -> String {
    let mut padded = bytes.to_vec();
    padded.push(0x80);
    while padded.len() % 64 != 56 {
        padded.push(0);
    }
    padded.extend((8 * bytes.len() as u64).to_le_bytes());
    let mut state = [0x6745_2301u32, 0xefcd_ab89, 0x98ba_dcfe, 0x1032_5476];
    for block in padded.chunks_exact(64) {
        let added = rounds(state, block);
        state.iter_mut().zip(added).for_each(|(s, a)| *s = s.wrapping_add(a));
    }
    state.iter().flat_map(|word| word.to_le_bytes()).map(|byte| format!("{byte:02x}")).collect()
}

const TURNS: [[u32; 4]; 4] = [[7, 12, 17, 22], [5, 9, 14, 20], [4, 11, 16, 23], [6, 10, 15, 21]];

fn rounds([mut a, mut b, mut c, mut d]: [u32; 4], block: &[u8]) -> [u32; 4] {
    let word = |k: usize| u32::from_le_bytes([block[4 * k], block[4 * k + 1], block[4 * k + 2], block[4 * k + 3]]);
    for i in 0..64 {
        let (mixed, k) = match i / 16 {
            0 => ((b & c) | (!b & d), i),
            1 => ((d & b) | (!d & c), (5 * i + 1) % 16),
            2 => (b ^ c ^ d, (3 * i + 5) % 16),
            _ => (c ^ (b | !d), (7 * i) % 16),
        };
        // The table of RFC 1321 is the whole part of 2³² |sin(i + 1)|.
        let sine = (4_294_967_296.0 * f64::from(i as u32 + 1).sin().abs()) as u32;
        let sum = a.wrapping_add(mixed).wrapping_add(sine).wrapping_add(word(k));
        (a, d, c, b) = (d, c, b, b.wrapping_add(sum.rotate_left(TURNS[i / 16][i % 4])));
    }
    [a, b, c, d]
}

#[cfg(test)]
mod tests {
    use super::md5;

    #[test]
    fn the_test_suite_of_rfc_1321() {
        for (text, digest) in [
            ("", "d41d8cd98f00b204e9800998ecf8427e"),
            ("a", "0cc175b9c0f1b6a831c399e269772661"),
            ("message digest", "f96b697d7cb7938d525a2f31aaf161d0"),
            (
                "12345678901234567890123456789012345678901234567890123456789012345678901234567890",
                "57edf4a22be3c955ac49da2e2107b67a",
            ),
        ] {
            assert_eq!(md5(text.as_bytes()), digest);
        }
    }
}
