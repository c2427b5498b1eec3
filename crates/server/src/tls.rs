//! An encrypted door beside the plain one: browsers give a camera's live picture only to pages that came
//! encrypted, or from the same machine.
//!
//! The shop has an authority of its own, kept in its folder, that vouches for this computer's addresses. A phone
//! either accepts the browser's warning once or is told to trust that authority. Nothing else needs this door: where
//! it cannot be opened, all but the live camera works on.

use axum_server::tls_rustls::RustlsConfig;
use rcgen::{
    BasicConstraints, CertificateParams, DnType, ExtendedKeyUsagePurpose, IsCa, Issuer, KeyPair, KeyUsagePurpose,
};
use std::net::IpAddr;
use std::path::{Path, PathBuf};
use time::{Duration, OffsetDateTime};

/// Browsers refuse certificates of servers that are valid for longer than 398 days.
const SERVER_DAYS: i64 = 390;
const AUTHORITY_DAYS: i64 = 3650;
/// Clocks of phones may be a little behind.
const BEFORE_DAYS: i64 = 2;

/// Why there is no encrypted door.
#[derive(Debug, thiserror::Error)]
pub enum TlsError {
    /// The authority's files cannot be read or written.
    #[error("{0} cannot be used: {1}")]
    File(PathBuf, std::io::Error),
    /// A certificate cannot be made.
    #[error("no certificate can be made: {0}")]
    Certificate(#[from] rcgen::Error),
    /// The certificate cannot be served.
    #[error("the certificate cannot be used: {0}")]
    Serve(std::io::Error),
}

/// The shop's own authority.
pub struct Authority {
    /// Its certificate, PEM.
    pub pem: String,
    key: KeyPair,
}

impl Authority {
    /// The authority of a shop's folder; made where there is none.
    pub fn of(shop: &Path) -> Result<Self, TlsError> {
        let folder = shop.join("authority");
        let (certificate, key) = (folder.join("authority.crt"), folder.join("authority.key"));
        let file = |path: &Path| {
            let path = path.to_owned();
            move |why| TlsError::File(path, why)
        };
        if certificate.is_file() && key.is_file() {
            let pem = std::fs::read_to_string(&certificate).map_err(file(&certificate))?;
            let text = std::fs::read_to_string(&key).map_err(file(&key))?;
            return Ok(Self { pem, key: KeyPair::from_pem(&text)? });
        }
        let made = Self::new()?;
        std::fs::create_dir_all(&folder).map_err(file(&folder))?;
        write_secret(&key, &made.key.serialize_pem()).map_err(file(&key))?;
        std::fs::write(&certificate, &made.pem).map_err(file(&certificate))?;
        Ok(made)
    }

    fn new() -> Result<Self, TlsError> {
        let key = KeyPair::generate()?;
        Ok(Self { pem: authority()?.self_signed(&key)?.pem(), key })
    }

    /// A certificate for these addresses, ready to serve.
    pub async fn vouch(&self, addresses: &[IpAddr]) -> Result<RustlsConfig, TlsError> {
        let names = addresses.iter().map(IpAddr::to_string).chain(["localhost".to_owned()]).collect();
        let mut wanted = params("Dentwright", names, SERVER_DAYS)?;
        wanted.key_usages = vec![KeyUsagePurpose::DigitalSignature];
        wanted.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        let key = KeyPair::generate()?;
        let issuer = Issuer::new(authority()?, &self.key);
        let chain = wanted.signed_by(&key, &issuer)?.pem() + &self.pem;
        RustlsConfig::from_pem(chain.into_bytes(), key.serialize_pem().into_bytes()).await.map_err(TlsError::Serve)
    }
}

/// The authority's own particulars; all but its dates are the same every time.
fn authority() -> Result<CertificateParams, rcgen::Error> {
    let mut wanted = params("Dentwright, this shop's own authority", Vec::new(), AUTHORITY_DAYS)?;
    wanted.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    wanted.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    Ok(wanted)
}

fn params(name: &str, names: Vec<String>, days: i64) -> Result<CertificateParams, rcgen::Error> {
    let mut wanted = CertificateParams::new(names)?;
    wanted.distinguished_name.push(DnType::CommonName, name);
    let now = OffsetDateTime::now_utc();
    (wanted.not_before, wanted.not_after) = (now - Duration::days(BEFORE_DAYS), now + Duration::days(days));
    Ok(wanted)
}

/// Writes a file that only its owner may read.
fn write_secret(path: &Path, text: &str) -> std::io::Result<()> {
    let mut options = std::fs::OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    std::io::Write::write_all(&mut options.open(path)?, text.as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn the_authority_stays_and_its_key_is_the_owners() {
        let shop = tempfile::tempdir().unwrap();
        let first = Authority::of(shop.path()).unwrap();
        let second = Authority::of(shop.path()).unwrap();
        assert_eq!(first.pem, second.pem, "phones that trust it go on trusting it");
        second.vouch(&["192.168.7.1".parse().unwrap()]).await.expect("a certificate that can be served");
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let key = std::fs::metadata(shop.path().join("authority/authority.key")).unwrap();
            assert_eq!(key.permissions().mode() & 0o777, 0o600);
        }
    }

    #[test]
    fn a_broken_authority_is_told_and_not_replaced() {
        let shop = tempfile::tempdir().unwrap();
        Authority::of(shop.path()).unwrap();
        let key = shop.path().join("authority/authority.key");
        std::fs::write(&key, "no key").unwrap();
        assert!(Authority::of(shop.path()).is_err());
        assert_eq!(std::fs::read_to_string(&key).unwrap(), "no key");
    }
}
