"""Small disks in memory, and programs without powers."""

import atexit
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

PAGE = os.sysconf("SC_PAGESIZE")


def in_a_mount_name_space():
    """Whether small disks can be mounted: begins this test again in a name space of its own, as root of this machine or only in there. What is
    mounted goes with the process."""
    if "EVENCOUNT_MOUNTS" in os.environ:
        return os.environ["EVENCOUNT_MOUNTS"] == "1"
    for how in (["unshare", "-m"], ["unshare", "-rm"]):
        command = [*how, "--propagation", "private"]
        if shutil.which("unshare") and subprocess.run([*command, "mount", "-t", "tmpfs", "none", "/mnt"], capture_output=True).returncode == 0:
            os.environ["EVENCOUNT_MOUNTS"] = "1"
            os.execvp(command[0], [*command, sys.executable, *sys.argv])
    return False


class Disk:
    def __init__(self, size):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="evencount-disk-"))
        subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size}", "none", self.folder], check=True)
        self.filler = self.folder / "filler"

    def clear(self):
        for path in self.folder.iterdir():
            shutil.rmtree(path) if path.is_dir() and not path.is_symlink() else path.unlink()

    def free(self):
        there = os.statvfs(self.folder)
        return there.f_bavail * there.f_frsize

    def leave(self, pages):
        """Fills it but for so many pages."""
        more = self.free() - pages * PAGE
        with open(self.filler, "ab") as filler:
            if more > 0:
                os.posix_fallocate(filler.fileno(), filler.tell(), more)

    def make_room(self):
        self.filler.unlink(missing_ok=True)

    def read_only(self, yes):
        subprocess.run(["mount", "-o", f"remount,bind,{'ro' if yes else 'rw'}", self.folder], check=True)

    def remove(self):
        subprocess.run(["umount", "--lazy", self.folder], check=True)
        self.folder.rmdir()


NO_POWERS = ["setpriv", "--bounding-set", "-all", "--inh-caps", "-all"] if os.geteuid() == 0 else []


def _script(words):
    """A program that becomes another, begun in another way."""
    with tempfile.NamedTemporaryFile("w", prefix="evencount-run-", suffix=".sh", delete=False) as script:
        script.write(f"#!/bin/sh\nexec {words} \"$@\"\n")
    os.chmod(script.name, 0o755)
    atexit.register(lambda: pathlib.Path(script.name).unlink(missing_ok=True))
    return script.name


def without_powers(program):
    """The program as somebody to whom permissions mean something."""
    return _script(" ".join([*NO_POWERS, f"'{program}'"])) if NO_POWERS else program


def user_words(user):
    return ["setpriv", "--reuid", str(user), "--regid", str(user), "--clear-groups"]


def can_be(user, program):
    """Whether a process may become that user, and the user run the program and read what lies in the same checkout, which may be in root's own
    folder. (What setpriv starts is found with root's rights, but opens files with the user's.) Root of a name space of its own has no other users."""
    seen = [*user_words(user), "sh", "-c", 'test -x "$1" && test -r "$1"', "seen", program]
    return subprocess.run(seen, capture_output=True).returncode == 0


def as_user(program, user):
    return _script(" ".join([*user_words(user), f"'{program}'"]))
