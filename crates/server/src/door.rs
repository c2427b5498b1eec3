//! Who may come in: this machine always, other devices once they are paired.
//!
//! A pairing code is valid once, for a quarter of an hour, and for a few guesses only. A paired device
//! holds a token of 256 random bits; the record keeps its hash alone.

use jiff::{SignedDuration, Timestamp};
use std::net::{IpAddr, Ipv4Addr};
use std::sync::Mutex;

/// Letters and digits that are not taken for one another when read aloud or typed.
const LETTERS: &[u8; 32] = b"23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
/// 8 of 32 letters: 40 bits, far beyond the guesses that are allowed.
const CODE_LENGTH: usize = 8;
const CODE_MINUTES: i64 = 15;
const GUESSES: u32 = 5;
/// A paired device is asked for a new code after this.
pub const DEVICE_DAYS: i64 = 90;

/// The door of a server.
pub struct Door {
    /// The address under which other devices reach it; none where it is closed to them.
    pub outside: Option<IpAddr>,
    /// Port it listens on.
    pub port: u16,
    /// Port of the encrypted door beside it; none where there is none.
    pub secure_port: Option<u16>,
    code: Mutex<Option<Code>>,
}

struct Code {
    text: String,
    until: Timestamp,
    guesses: u32,
}

impl Door {
    /// A door with its addresses and no code yet.
    pub fn new(outside: Option<IpAddr>, port: u16, secure_port: Option<u16>) -> Self {
        Self { outside, port, secure_port, code: Mutex::new(None) }
    }

    /// Makes a pairing code; an earlier one is void.
    ///
    /// # Errors
    /// When the system gives no random numbers.
    pub fn new_code(&self, now: Timestamp) -> Result<String, getrandom::Error> {
        let text = new_code()?;
        let until = now + SignedDuration::from_mins(CODE_MINUTES);
        *self.code.lock().unwrap_or_else(|broken| broken.into_inner()) =
            Some(Code { text: text.clone(), until, guesses: 0 });
        Ok(text)
    }

    /// Whether this is the code; it is void afterwards, and after too many wrong ones.
    pub fn take_code(&self, given: &str, now: Timestamp) -> bool {
        let mut kept = self.code.lock().unwrap_or_else(|broken| broken.into_inner());
        let Some(code) = kept.as_mut() else { return false };
        code.guesses += 1;
        let fits = now < code.until && same(code.text.as_bytes(), tidy(given).as_bytes());
        if fits || code.guesses >= GUESSES || now >= code.until {
            *kept = None;
        }
        fits
    }

    /// Where another device opens the app with a code.
    pub fn pairing_address(&self, code: &str) -> Option<String> {
        self.outside.map(|address| format!("http://{}/#pair={code}", with_port(address, self.port)))
    }

    /// An address here for any device: that of the network where the door is open to it, else this machine's own.
    pub fn plain_address(&self, path: &str) -> String {
        let host = self.outside.unwrap_or(Ipv4Addr::LOCALHOST.into());
        format!("http://{}/{path}", with_port(host, self.port))
    }

    /// An encrypted address for devices of the network; none where there is no such door.
    pub fn secure_address(&self, path: &str) -> Option<String> {
        let (host, port) = self.outside.zip(self.secure_port)?;
        Some(format!("https://{}/{path}", with_port(host, port)))
    }
}

/// A code that can be read aloud and typed.
///
/// # Errors
/// When the system gives no random numbers.
pub fn new_code() -> Result<String, getrandom::Error> {
    let mut random = [0u8; CODE_LENGTH];
    getrandom::fill(&mut random)?;
    Ok(random.iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect())
}

/// A token for a device, and the hash under which the record knows it.
///
/// # Errors
/// When the system gives no random numbers.
pub fn new_token() -> Result<(String, String), getrandom::Error> {
    let mut random = [0u8; 32];
    getrandom::fill(&mut random)?;
    let token: String = random.iter().map(|byte| format!("{byte:02x}")).collect();
    let hash = hash_of(&token);
    Ok((token, hash))
}

/// The hash under which the record knows a token.
pub fn hash_of(token: &str) -> String {
    blake3::hash(token.as_bytes()).to_hex().to_string()
}

/// `host:port`, with the brackets that IPv6 needs.
pub fn with_port(address: IpAddr, port: u16) -> String {
    std::net::SocketAddr::new(address, port).to_string()
}

/// As typed, without spaces and hyphens, in capitals.
fn tidy(code: &str) -> String {
    code.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect()
}

/// Equal, in a time that does not tell where they differ.
fn same(a: &[u8], b: &[u8]) -> bool {
    a.len() == b.len() && a.iter().zip(b).fold(0, |differ, (a, b)| differ | (a ^ b)) == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(minute: i64) -> Timestamp {
        Timestamp::UNIX_EPOCH + SignedDuration::from_mins(minute)
    }

    #[test]
    fn a_code_opens_once() {
        let door = Door::new(None, 1, None);
        assert!(!door.take_code("ABCDEFGH", at(0)), "no code was made");
        let code = door.new_code(at(0)).unwrap();
        assert!(door.take_code(&format!("{}-{}", &code[..4], code[4..].to_lowercase()), at(14)));
        assert!(!door.take_code(&code, at(14)));
    }

    #[test]
    fn a_code_grows_old_and_bears_few_guesses() {
        let door = Door::new(None, 1, None);
        let code = door.new_code(at(0)).unwrap();
        assert!(!door.take_code(&code, at(15)));
        let code = door.new_code(at(0)).unwrap();
        for _ in 0..GUESSES {
            assert!(!door.take_code("22222222", at(1)) || code == "22222222");
        }
        assert!(!door.take_code(&code, at(1)));
    }

    #[test]
    fn tokens_differ_and_are_kept_as_hashes() {
        let (one, hash) = new_token().unwrap();
        let (two, _) = new_token().unwrap();
        assert_ne!(one, two);
        assert_eq!((one.len(), hash_of(&one)), (64, hash));
    }
}
