"""A certificate made on the spot, for the hours in which phones are let in."""

import ssl
import tempfile
from dataclasses import dataclass
from datetime import datetime, timedelta
from ipaddress import IPv4Address, IPv6Address
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

ALLOWANCE = timedelta(hours=1)
"""A phone's clock may be off by this much."""


@dataclass(frozen=True)
class Certificate:
    """A certificate that vouches for itself, with its key.

    Attributes:
        chain: the certificate, as PEM.
        key: its private key, as PEM; lives in memory alone.
        fingerprint: SHA-256 of the certificate, as browsers show it.
    """

    chain: bytes
    key: bytes
    fingerprint: str

    def context(self) -> ssl.SSLContext:
        """What a TLS server needs: TLS 1.2 or 1.3 with Python's own choice of ciphers."""
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        context.minimum_version = ssl.TLSVersion.TLSv1_2
        with (
            tempfile.TemporaryDirectory() as folder
        ):  # readable by this user alone; Python reads keys from files only
            chain, key = Path(folder) / "chain.pem", Path(folder) / "key.pem"
            chain.write_bytes(self.chain)
            key.write_bytes(self.key)
            context.load_cert_chain(chain, key)
        return context


def make_certificate(address: IPv4Address | IPv6Address, since: datetime, until: datetime) -> Certificate:
    """A certificate for one address of this computer, that signs nothing but itself.

    Args:
        address: where phones reach this computer.
        since: when it is made, zone-aware.
        until: when phones are no longer let in, zone-aware.
    """
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"tripplan on {address}")])
    usages = x509.KeyUsage(
        digital_signature=True,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=False,
        crl_sign=False,
        encipher_only=False,
        decipher_only=False,
    )
    made = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(since - ALLOWANCE)
        .not_valid_after(until + ALLOWANCE)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(usages, critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(address)]), critical=False)
        .sign(key, hashes.SHA256())
    )
    encoding = serialization.Encoding.PEM
    return Certificate(
        made.public_bytes(encoding),
        key.private_bytes(encoding, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()),
        made.fingerprint(hashes.SHA256()).hex(":").upper(),
    )
