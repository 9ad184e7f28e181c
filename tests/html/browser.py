# SPDX-License-Identifier: MIT
"""Shows pages to a headless Chromium that can reach nothing but a small server of ours."""

import http.server
import json
import pathlib
import shutil
import subprocess
import tempfile
import threading

HERE = pathlib.Path(__file__).resolve().parent
WIDTHS = (390, 1280)  # a phone and a desk
SECONDS = 300

# The page may do nothing but style itself; whatever it tries beyond that the browser reports to the server.
POLICY = "default-src 'none'; style-src 'unsafe-inline'; report-uri /blocked/{}"

WRAPPER = """<!DOCTYPE html><title>measure</title><link rel="icon" href="data:,"><body><script type="module">
import {{ measureAll }} from '/measure.js';
measureAll({pages}, {widths});
</script>"""


def chromium(*arguments, profile):
    """A command that starts Chromium without a window, without its own errands, and cut off from the network."""
    return [shutil.which("chromium") or "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
            "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--disable-extensions", "--hide-scrollbars", f"--user-data-dir={profile}",
            "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1", *arguments]


class Server(http.server.ThreadingHTTPServer):
    """Serves the pages under the policy and remembers what they tried and what was measured."""

    def __init__(self, pages):
        super().__init__(("127.0.0.1", 0), Handler)
        self.pages = {pathlib.Path(page).name: pathlib.Path(page) for page in pages}
        self.attempts = []
        self.results = None
        self.done = threading.Event()


class Handler(http.server.BaseHTTPRequestHandler):
    def log_message(self, *_):
        pass

    def answer(self, kind, content, policy=None):
        self.send_response(200)
        self.send_header("Content-Type", kind + "; charset=utf-8")
        self.send_header("Content-Length", str(len(content)))
        if policy:
            self.send_header("Content-Security-Policy", policy)
        self.end_headers()
        self.wfile.write(content)

    def do_GET(self):
        name = self.path.rsplit("/", 1)[-1]
        if self.path == "/":
            pages = json.dumps(sorted(self.server.pages))
            self.answer("text/html", WRAPPER.format(pages=pages, widths=list(WIDTHS)).encode())
        elif self.path == "/measure.js":
            self.answer("text/javascript", (HERE / "measure.js").read_bytes())
        elif self.path.startswith("/pages/") and name in self.server.pages:
            self.answer("text/html", self.server.pages[name].read_bytes(), POLICY.format(name))
        else:
            self.server.attempts.append(("a page", self.path))
            self.send_error(404)

    def do_POST(self):
        body = self.rfile.read(int(self.headers.get("Content-Length", 0)))
        self.answer("text/plain", b"")
        if self.path == "/results":
            self.server.results = json.loads(body)
            self.server.done.set()
        elif self.path.startswith("/blocked/"):
            report = json.loads(body).get("csp-report", {})
            self.server.attempts.append((self.path.removeprefix("/blocked/"),
                                         f'{report.get("effective-directive")} {report.get("blocked-uri")}'))


def measured(pages):
    """What measure.js found for each page and width, and what the pages tried to load or run."""
    server = Server(pages)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        # The debugging port keeps the browser open; it is ended as soon as the results are in.
        command = chromium("--window-size=1400,1000", "--remote-debugging-port=0",
                           f"http://127.0.0.1:{server.server_port}/", profile=profile)
        with subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as browser:
            finished = server.done.wait(SECONDS)
            browser.terminate()
            browser.wait(30)
    server.shutdown()
    if not finished:
        raise TimeoutError(f"the browser measured nothing within {SECONDS} s")
    return server.results, server.attempts


def print_page(page, pdf):
    """Prints a page to PDF as the browser's own print command does."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        subprocess.run(chromium("--no-pdf-header-footer", f"--print-to-pdf={pdf}", pathlib.Path(page).as_uri(),
                                profile=profile),
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=SECONDS, check=True)
