#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-2.0-or-later
"""Requests that mean harm: malformed, huge, slow, reaching out of the folder, slipping in headers, and very many at
once. While they last /health answers within 5 s, a second later at once, and the server ends well when told to.

    tests/query/web/hostile.py [--build DIR] [--seconds N] [--connections N]
"""

import argparse
import pathlib
import resource
import socket
import sys
import threading
import time

from serving import seconds_for_health, served

ROOT = pathlib.Path(__file__).resolve().parents[3]
HOST = b"Host: 127.0.0.1\r\n\r\n"

# What is sent, and the status of the answer; None: the connection may just end.
SINGLE = [
    (b"GET /health HTTP/1.1\r\n" + HOST, 200),
    (b"\r\n\r\nGET /health HTTP/1.1\r\n" + HOST, 200),
    (b"HEAD / HTTP/1.1\r\n" + HOST, 200),
    (b"GET /../../etc/passwd HTTP/1.1\r\n" + HOST, 404),
    (b"GET /%2e%2e/%2e%2e/etc/passwd HTTP/1.1\r\n" + HOST, 404),
    (b"GET /entry/..%2f..%2fetc%2fpasswd HTTP/1.1\r\n" + HOST, 404),
    (b"GET /page.css%00.html HTTP/1.1\r\n" + HOST, 400),
    (b"GET /find?q=a%0d%0aSet-Cookie:%20a=b HTTP/1.1\r\n" + HOST, 400),
    (b"GET /find?q=\xff\xfe HTTP/1.1\r\n" + HOST, 400),
    (b"POST /find HTTP/1.1\r\nContent-Length: 3\r\n" + HOST + b"q=a", 405),
    (b"PUT / HTTP/1.1\r\n" + HOST, 405),
    (b"GET /find HTTP/1.1\r\nTransfer-Encoding: chunked\r\n" + HOST + b"0\r\n\r\n", 413),
    (b"GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", 400),
    (b"GET / HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n", 421),
    (b"GET / HTTP/1.1\r\n\r\n", 400),
    (b"GET / HTTP/9.9\r\n" + HOST, 505),
    (b"GET /" + b"a" * 5000 + b" HTTP/1.1\r\n" + HOST, 414),
    (b"GET / HTTP/1.1\r\nx: " + b"a" * 20000 + b"\r\n" + HOST, 431),
    (b"GET / HTTP/1.1\r\n" + b"x: y\r\n" * 200 + HOST, 431),
    (b"A" * 200000, 431),
    (b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03\r\n\r\n", 400),
    (b"\x00\r\n\r\n", 400),
    (b"GET /find?q=" + b"(" * 3000 + b" HTTP/1.1\r\n" + HOST, 200),
    (b"GET /find?q=" + b"top+" * 900 + b" HTTP/1.1\r\n" + HOST, 200),
    (b"GET /match?q=" + b"9" * 3000 + b" HTTP/1.1\r\n" + HOST, 400),
    (b"GET /convert?q=" + b"1e9" * 900 + b"+mm HTTP/1.1\r\n" + HOST, 400),
    (b"GET /?" + b"a=b&" * 900 + b" HTTP/1.1\r\n" + HOST, 200),
]


def connected(port, timeout=10.0):
    return socket.create_connection(("127.0.0.1", port), timeout)


def answer_to(port, sent):
    """All that comes back, the other side having been told that no more comes."""
    with connected(port) as talk:
        try:
            talk.sendall(sent)
            talk.shutdown(socket.SHUT_WR)
        except OSError:
            pass  # it has heard enough
        parts = []
        try:
            while part := talk.recv(65536):
                parts.append(part)
        except OSError:
            pass
    return b"".join(parts)


def single_faults(port):
    for sent, status in SINGLE:
        answer = answer_to(port, sent)
        shown = sent[:60]
        if not answer.startswith(b"HTTP/1.1 %d " % status):
            yield f"{shown}: {answer[:60]}, not {status}"
        if b"Set-Cookie" in answer.split(b"\r\n\r\n")[0]:
            yield f"{shown}: a header was slipped in"
        if b"root:" in answer:
            yield f"{shown}: it reads files"


def pipelined_faults(port):
    """Requests that come all at once are answered one after the other."""
    asked = b"GET /health HTTP/1.1\r\nHost: localhost\r\n\r\n"
    answer = answer_to(port, asked * 20 + b"GET /health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
    if answer.count(b"HTTP/1.1 200 OK") != 21:
        yield f"of 21 requests at once {answer.count(b'HTTP/1.1 200 OK')} were answered"


class Storm:
    """Everything at once, until it is ended."""

    def __init__(self, port, connections):
        self.port, self.ending, self.idle = port, threading.Event(), []
        self.threads = [threading.Thread(target=self.trickle, args=(connections,)), threading.Thread(target=self.reconnect),
                        threading.Thread(target=self.never_read), threading.Thread(target=self.garbage)]

    def __enter__(self):
        for thread in self.threads:
            thread.start()
        return self

    def __exit__(self, *_):
        self.ending.set()
        for thread in self.threads:
            thread.join()

    def trickle(self, connections):
        """Heads that never end, a byte at a time, on as many connections as can be had."""
        talks = []
        while not self.ending.is_set():
            for _ in range(50):
                if len(talks) < connections:
                    try:
                        talks.append(connected(self.port, 2.0))
                        talks[-1].setblocking(False)
                    except OSError:
                        break
            for talk in list(talks):
                try:
                    talk.send(b"G")
                except BlockingIOError:
                    pass
                except OSError:
                    talks.remove(talk)
                    talk.close()
            time.sleep(0.05)
        for talk in talks:
            talk.close()

    def reconnect(self):
        while not self.ending.is_set():
            try:
                connected(self.port, 2.0).close()
            except OSError:
                pass
            time.sleep(0.001)

    def never_read(self):
        """Asks for the longest page again and again, and reads none of it."""
        asked = b"GET /card/sorvane-41-rod HTTP/1.1\r\nHost: localhost\r\n\r\n"
        talks = []
        while not self.ending.is_set():
            try:
                talks.append(connected(self.port, 2.0))
                talks[-1].setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 1024)
                talks[-1].setblocking(False)
                talks[-1].send(asked * 60)
            except OSError:
                pass
            time.sleep(0.05)
        for talk in talks:
            talk.close()

    def garbage(self):
        while not self.ending.is_set():
            for sent, _ in SINGLE:
                if self.ending.is_set():
                    return
                try:
                    with connected(self.port, 2.0) as talk:
                        talk.sendall(sent)
                except OSError:
                    pass


def storm_faults(port, seconds, connections, patience):
    worst = 0.0
    with Storm(port, connections):
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            took = seconds_for_health(port, 5 * patience)
            if took is None:
                yield f"/health did not answer within {5 * patience:g} s under the storm"
                break
            worst = max(worst, took)
            time.sleep(0.2)
    time.sleep(patience)
    took = seconds_for_health(port, patience)
    if took is None:
        yield f"{patience:g} s after the storm /health does not answer within {patience:g} s"
    print(f"/health: at worst {worst * 1000:.0f} ms under {connections} connections, {(took or 0) * 1000:.0f} ms after")


def faults(sheaf, library, seconds, connections, patience):
    with served(sheaf, library) as (process, port):
        yield from single_faults(port)
        yield from pipelined_faults(port)
        yield from storm_faults(port, seconds, connections, patience)
        process.terminate()
        if process.wait(10) != 0:
            yield f"the server ended with {process.returncode}"


def main():
    parser = argparse.ArgumentParser(description="Hostile requests.")
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build" / "debug")
    parser.add_argument("--seconds", type=float, default=4)
    parser.add_argument("--connections", type=int, default=1500)
    parser.add_argument("--patience", type=float, default=1, help="how many times slower the program is than an ordinary one")
    given = parser.parse_args()
    most = resource.getrlimit(resource.RLIMIT_NOFILE)[1]
    resource.setrlimit(resource.RLIMIT_NOFILE, (min(most, given.connections + 2000), most))
    found = list(faults(given.build / "sheaf", given.build / "orrindale.sheaf", given.seconds, given.connections, given.patience))
    print("\n".join(found) or "nothing harmed it")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
