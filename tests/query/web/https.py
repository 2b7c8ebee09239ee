#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""The page by https: with a certificate and its key it speaks TLS 1.2 and later alone, whole responses and slow
handshakes included; without both, or with a wrong one, it does not start.

    tests/query/web/https.py [--build DIR]
"""

import argparse
import pathlib
import socket
import ssl
import subprocess
import sys
import tempfile
import warnings

from serving import served

ROOT = pathlib.Path(__file__).resolve().parents[3]


def certificate(folder, name):
    """A certificate for that name and loopback, and its key."""
    pair = folder / f"{name}.pem", folder / f"{name}.key"
    subprocess.run(["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes", "-days", "2",
                    "-subj", f"/CN={name}", "-addext", f"subjectAltName=DNS:{name},IP:127.0.0.1",
                    "-out", pair[0], "-keyout", pair[1]], check=True, capture_output=True)
    return pair


def asked(port, trusted, target, host="bench.local"):
    context = ssl.create_default_context(cafile=trusted)
    with socket.create_connection(("127.0.0.1", port), 10) as plain:
        with context.wrap_socket(plain, server_hostname=host) as talk:
            talk.sendall(f"GET {target} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n".encode())
            parts = []
            while part := talk.recv(65536):
                parts.append(part)
    return b"".join(parts)


def speaks_old_tls(port, trusted):
    context = ssl.create_default_context(cafile=trusted)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        context.minimum_version = ssl.TLSVersion.TLSv1
        context.maximum_version = ssl.TLSVersion.TLSv1_1
    context.set_ciphers("ALL:@SECLEVEL=0")
    try:
        with socket.create_connection(("127.0.0.1", port), 10) as plain, context.wrap_socket(plain, server_hostname="bench.local"):
            return True
    except OSError:
        return False


def start_faults(sheaf, library, pair, other):
    for flags in ([["--certificate", pair[0]], ["--key", pair[1]], ["--certificate", pair[0], "--key", other[1]],
                   ["--certificate", pair[1], "--key", pair[1]], ["--certificate", "absent", "--key", pair[1]]]):
        ran = subprocess.run([sheaf, "serve", "--port", "0", "--library", library, *flags], capture_output=True, text=True,
                             timeout=20, check=False)
        if ran.returncode != 2 or not ran.stderr.startswith("sheaf: error: "):
            yield f"{flags}: {ran.returncode} {ran.stderr}"


def faults(sheaf, library, folder):
    pair, other = certificate(folder, "bench.local"), certificate(folder, "other.local")
    yield from start_faults(sheaf, library, pair, other)
    with served(sheaf, library, "--host", "bench.local", "--certificate", pair[0], "--key", pair[1]) as (process, port):
        silent = [socket.create_connection(("127.0.0.1", port), 10) for _ in range(50)]
        card = asked(port, pair[0], "/card/sorvane-41-rod")
        length = int(card.split(b"Content-Length: ")[1].split(b"\r\n")[0])
        if not card.startswith(b"HTTP/1.1 200 OK") or len(card.split(b"\r\n\r\n", 1)[1]) != length:
            yield f"the card does not come whole: {card[:200]}"
        if not asked(port, pair[0], "/health").startswith(b"HTTP/1.1 200"):
            yield "no health"
        if speaks_old_tls(port, pair[0]):
            yield "TLS 1.1 is spoken"
        with socket.create_connection(("127.0.0.1", port), 10) as plain:
            plain.sendall(b"GET / HTTP/1.1\r\nHost: bench.local\r\n\r\n")
            try:
                if b"HTTP" in plain.recv(65536):
                    yield "it answers without TLS"
            except ConnectionResetError:
                pass  # refused, as it should be
        for talk in silent:
            talk.close()
        process.terminate()
        if process.wait(10) != 0:
            yield f"the server ended with {process.returncode}"


def main():
    parser = argparse.ArgumentParser(description="By https.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    build = parser.parse_args().build
    with tempfile.TemporaryDirectory() as name:
        found = list(faults(build / "sheaf", build / "orrindale.sheaf", pathlib.Path(name)))
    print("\n".join(found) or "https holds")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
