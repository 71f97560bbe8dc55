"""Certificates that a server at home makes itself."""

import importlib.util
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

from tests.missing import not_installed


@dataclass(frozen=True)
class Certificate:
    """A certificate in files.

    Attributes:
        public: what a program is given that is to trust it.
        private: what only the server has.
    """

    public: Path
    private: Path


def self_signed(folder: Path) -> Certificate:
    """A certificate for this computer that it signed itself, in a folder that is made if need be."""
    if importlib.util.find_spec("cryptography") is None:
        not_installed("cryptography is not installed; it is in tests/requirements.txt")
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes, serialization
    from cryptography.hazmat.primitives.asymmetric import ec

    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(x509.NameOID.COMMON_NAME, "test")])
    now = datetime.now(UTC)
    signed = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(1)
        .not_valid_before(now - timedelta(hours=1))
        .not_valid_after(now + timedelta(days=90))
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(ip_address("127.0.0.1"))]), critical=False)
        .sign(key, hashes.SHA256())
    )
    folder.mkdir(exist_ok=True)
    made = Certificate(folder / "public.pem", folder / "private.pem")
    made.public.write_bytes(signed.public_bytes(serialization.Encoding.PEM))
    made.private.write_bytes(
        key.private_bytes(
            serialization.Encoding.PEM,
            serialization.PrivateFormat.PKCS8,
            serialization.NoEncryption(),
        )
    )
    return made
