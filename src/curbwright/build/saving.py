"""Writes a build file so that it is always wholly the old one or wholly the new one."""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import secrets
import stat
import time
from pathlib import Path

from curbwright.errors import EditProblem

_HOUR = 3600  # seconds after which a half-written copy belongs to no one, whatever its process number


def save(path: str | os.PathLike[str], text: str, *, was: str | None = None) -> None:
    """Put ``text`` in the place of the file at ``path``, all at once.

    Raises EditProblem, and leaves the file as it was, if that cannot be done. The new text is written
    beside the file and then takes its name, so a power cut leaves the old or the new text, whole. The file
    keeps its permissions; a link is followed to the file it names. With ``was``, the text the change
    started from, a file that someone else has changed meanwhile is left alone.
    """
    data = _encoded(text)
    try:
        target = Path(os.path.realpath(path))
        mode = _mode(target)
        if (
            was is not None
            and mode is not None
            and target.read_bytes().removeprefix(b"\xef\xbb\xbf") != _encoded(was)
        ):
            raise EditProblem(f"{path} was changed meanwhile, so it was not saved. Read it again first.")
        _clear_leftovers(target)
        copy = _copy_beside(target, data, mode)
        try:
            os.replace(copy, target)
        except BaseException:
            _discard(copy)
            raise
        _settle(target.parent)
    except (OSError, ValueError) as error:
        raise _cannot("saved", path, error) from error


def create(path: str | os.PathLike[str], text: str) -> None:
    """Write a new file, whole or not at all.

    Raises FileExistsError if anything has that name already, EditProblem if it cannot be written.
    """
    data = _encoded(text)
    try:
        target = Path(path)
        _clear_leftovers(target)
        copy = _copy_beside(target, data, None)
        try:
            _take_free_name(copy, target, data)
        finally:
            _discard(copy)
        _settle(target.parent)
    except FileExistsError:
        raise FileExistsError(
            errno.EEXIST, "exists already, so nothing was written", os.fspath(path)
        ) from None
    except (OSError, ValueError) as error:
        raise _cannot("written", path, error) from error


def _encoded(text: str) -> bytes:
    try:
        return text.encode("utf-8")
    except UnicodeEncodeError as error:
        line = text.count("\n", 0, error.start) + 1
        raise EditProblem(f"line {line} has half a character that cannot be saved") from None


def _mode(target: Path) -> int | None:
    """The permissions of an existing file, which must be one that may be written; None if it is new."""
    try:
        kind = target.stat()
    except FileNotFoundError:
        return None
    if not stat.S_ISREG(kind.st_mode):
        raise EditProblem(f"{target} is not an ordinary file, so nothing was saved")
    if not os.access(target, os.W_OK):
        raise PermissionError("the file is write-protected")
    return stat.S_IMODE(kind.st_mode)


def _copy_beside(target: Path, data: bytes, mode: int | None) -> Path:
    copy = target.parent / f"{_mark(target)}{os.getpid()}-{secrets.token_hex(4)}.part"
    try:
        with open(os.open(copy, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            os.chmod(copy, mode)
    except BaseException:
        _discard(copy)
        raise
    return copy


def _take_free_name(copy: Path, target: Path, data: bytes) -> None:
    try:
        os.link(copy, target)
    except FileExistsError:
        raise
    except (OSError, NotImplementedError):
        # Some file systems know no second name for a file; there the name is claimed first.
        with open(target, "xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())


def _mark(target: Path) -> str:
    """Begins the names of the half-written copies of one file."""
    return f".curbwright-{hashlib.sha256(os.fsencode(target.name)).hexdigest()[:12]}-"


def _clear_leftovers(target: Path) -> None:
    """Delete the copies that a killed process left behind."""
    begins = _mark(target)
    with contextlib.suppress(OSError):
        for entry in list(os.scandir(target.parent)):
            if entry.name.startswith(begins) and entry.name.endswith(".part"):
                number = entry.name[len(begins) :].partition("-")[0]
                if not _is_running(number) or entry.stat().st_mtime < time.time() - _HOUR:
                    _discard(Path(entry.path))


def _is_running(number: str) -> bool:
    if os.name != "posix":
        return True  # elsewhere asking could end the process; the copy is deleted after an hour
    try:
        os.kill(int(number), 0)
    except PermissionError:
        return True
    except (OSError, ValueError, OverflowError):
        return False
    return True


def _discard(copy: Path) -> None:
    with contextlib.suppress(OSError):
        copy.unlink()


def _settle(folder: Path) -> None:
    """Make the new name itself survive a power cut, where the system can."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _cannot(done: str, path: str | os.PathLike[str], error: Exception) -> EditProblem:
    reason = getattr(error, "strerror", None) or str(error)
    return EditProblem(f"{os.fspath(path)!r} could not be {done}: {reason}. The file is as it was.")
