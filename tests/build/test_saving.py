"""A saved file is wholly the old one or wholly the new one, whatever happens meanwhile."""

from __future__ import annotations

import os
import random
import signal
import stat
import subprocess
import sys
import time
from pathlib import Path

import pytest

from curbwright.build import saving
from curbwright.build.edit import create, save
from curbwright.errors import EditProblem

posix = pytest.mark.skipif(os.name != "posix", reason="needs a Unix system")


def names_in(folder: Path) -> list[str]:
    return sorted(one.name for one in folder.iterdir())


def test_a_new_text_takes_the_place_of_the_old(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    save(file, "a = 1\r\nb = '°'\n")
    assert file.read_bytes() == "a = 1\r\nb = '°'\n".encode()
    save(str(file), "")
    assert file.read_bytes() == b""
    assert names_in(tmp_path) == ["cart.toml"]


@posix
def test_the_file_keeps_its_permissions(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_text("old")
    for mode in (0o600, 0o640, 0o666):
        file.chmod(mode)
        save(file, "new")
        assert stat.S_IMODE(file.stat().st_mode) == mode


@posix
def test_a_new_file_gets_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    (tmp_path / "other").touch()
    save(tmp_path / "saved.toml", "x")
    create(tmp_path / "created.toml", "x")
    usual = (tmp_path / "other").stat().st_mode
    assert (tmp_path / "saved.toml").stat().st_mode == usual
    assert (tmp_path / "created.toml").stat().st_mode == usual


@posix
def test_a_link_stays_a_link_and_its_file_is_saved(tmp_path: Path) -> None:
    (tmp_path / "carts").mkdir()
    file = tmp_path / "carts" / "cart.toml"
    file.write_text("old")
    link = tmp_path / "link.toml"
    link.symlink_to(Path("carts") / "cart.toml")
    save(link, "new")
    assert link.is_symlink()
    assert file.read_text() == "new"
    assert names_in(tmp_path / "carts") == ["cart.toml"]


@posix
def test_what_is_not_an_ordinary_file_is_left_alone(tmp_path: Path) -> None:
    with pytest.raises(EditProblem, match="not an ordinary file"):
        save(tmp_path, "x")
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(EditProblem, match="not an ordinary file"):
        save(tmp_path / "pipe", "x")
    loop = tmp_path / "loop"
    loop.symlink_to(loop)
    with pytest.raises(EditProblem, match="could not be saved"):
        save(loop, "x")
    assert names_in(tmp_path) == ["loop", "pipe"]


@pytest.mark.parametrize("name", ["nowhere/cart.toml", "a\0b", "x" * 300])
def test_a_place_where_no_file_can_be_is_said(name: str, tmp_path: Path) -> None:
    with pytest.raises(EditProblem, match="could not be saved"):
        save(tmp_path / name, "x")
    with pytest.raises(EditProblem, match="could not be written"):
        create(tmp_path / name, "x")
    assert names_in(tmp_path) == []


def test_a_file_name_of_the_greatest_length_can_be_saved(tmp_path: Path) -> None:
    file = tmp_path / ("x" * 255)
    save(file, "1")
    save(file, "2")
    assert file.read_text() == "2"


def test_a_write_protected_file_is_not_saved_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "cart.toml"
    file.write_text("old")
    file.chmod(0o444)
    monkeypatch.setattr(os, "access", lambda *_: False)  # the superuser may write everything
    with pytest.raises(EditProblem, match="write-protected. The file is as it was"):
        save(file, "new")
    assert file.read_text() == "old"


def test_text_that_cannot_be_saved_changes_nothing(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_text("old")
    with pytest.raises(EditProblem, match="line 2 has half a character"):
        save(file, "a\n\ud800")
    assert file.read_text() == "old"


@pytest.mark.parametrize("step", ["fsync", "replace", "chmod", "open"])
def test_a_failure_at_any_step_leaves_the_old_file_and_no_copy(
    step: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "cart.toml"
    file.write_text("old")

    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, step, fail)
    with pytest.raises(EditProblem, match="No space left on device. The file is as it was"):
        save(file, "new")
    assert file.read_text() == "old"
    assert names_in(tmp_path) == ["cart.toml"]


def test_a_stop_by_the_user_leaves_the_old_file_and_no_copy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    file = tmp_path / "cart.toml"
    file.write_text("old")
    for step in ("fsync", "replace"):
        with monkeypatch.context() as patch:
            patch.setattr(os, step, stop)
            with pytest.raises(KeyboardInterrupt):
                save(file, "new")
        assert file.read_text() == "old"
        assert names_in(tmp_path) == ["cart.toml"]


def test_a_file_changed_meanwhile_is_not_saved_over(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    file.write_bytes(b"\xef\xbb\xbfa = 1\n")
    save(file, "a = 2\n", was="a = 1\n")
    file.write_text("a = 3 # by hand\n")
    with pytest.raises(EditProblem, match="was changed meanwhile"):
        save(file, "a = 4\n", was="a = 2\n")
    assert file.read_text() == "a = 3 # by hand\n"
    file.unlink()
    save(file, "a = 5\n", was="a = 2\n")
    assert file.read_text() == "a = 5\n"


# --- a file that is new


def test_a_new_file_is_never_written_over_another(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    create(file, "first")
    with pytest.raises(FileExistsError) as caught:
        create(file, "second")
    assert caught.value.filename == str(file)
    assert file.read_text() == "first"
    assert names_in(tmp_path) == ["cart.toml"]


@posix
def test_a_link_to_nowhere_counts_as_something_there(tmp_path: Path) -> None:
    link = tmp_path / "cart.toml"
    link.symlink_to(tmp_path / "elsewhere.toml")
    with pytest.raises(FileExistsError):
        create(link, "x")
    assert names_in(tmp_path) == ["cart.toml"]


def test_a_file_system_without_second_names_will_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_links(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", no_links)
    create(tmp_path / "cart.toml", "first")
    assert (tmp_path / "cart.toml").read_text() == "first"
    with pytest.raises(FileExistsError):
        create(tmp_path / "cart.toml", "second")
    assert (tmp_path / "cart.toml").read_text() == "first"
    assert names_in(tmp_path) == ["cart.toml"]


# --- a process that is killed

OLD = "# old\n" + 'mass = "62 lb"\n' * 4000
NEW = "# new\n" + 'mass = "71 lb"\n' * 5000
SAVES_FOR_EVER = """
import sys
from curbwright.build.saving import save
old, new = (open(name, encoding="utf-8").read() for name in sys.argv[2:])
print("begun", flush=True)
while True:
    save(sys.argv[1], new)
    save(sys.argv[1], old)
"""


@posix
def test_a_process_killed_while_saving_leaves_a_whole_file(tmp_path: Path) -> None:
    texts = tmp_path / "texts"
    texts.mkdir()
    (texts / "old").write_text(OLD)
    (texts / "new").write_text(NEW)
    folder = tmp_path / "cart"
    folder.mkdir()
    file = folder / "cart.toml"
    file.write_text(OLD)
    moments = random.Random(20)
    seen: set[str] = set()
    leftovers = 0
    for _ in range(30):
        child = subprocess.Popen(
            [sys.executable, "-c", SAVES_FOR_EVER, str(file), str(texts / "old"), str(texts / "new")],
            stdout=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        )
        assert child.stdout is not None
        assert child.stdout.readline() == b"begun\n"
        time.sleep(moments.uniform(0, 0.03))
        child.send_signal(signal.SIGKILL)
        assert child.wait() == -signal.SIGKILL
        child.stdout.close()
        text = file.read_text()
        assert text in (OLD, NEW)
        seen.add(text)
        left = names_in(folder)
        assert len(left) <= 2  # the child before cleared what the one before it had left
        leftovers += len(left) - 1
    assert seen == {OLD, NEW}, "no child was killed between the two"
    assert leftovers > 0, "no child was killed in the middle of a copy"
    save(file, "a = 1\n")
    assert names_in(folder) == ["cart.toml"]


@posix
def test_only_copies_that_no_process_is_writing_are_cleared(tmp_path: Path) -> None:
    file = tmp_path / "cart.toml"
    mark = saving._mark(file)
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    left = tmp_path / f"{mark}{ended.pid}-0a.part"
    writing = tmp_path / f"{mark}{os.getpid()}-0b.part"
    forgotten = tmp_path / f"{mark}{os.getpid()}-0c.part"
    of_another_file = tmp_path / f"{saving._mark(tmp_path / 'other.toml')}{ended.pid}-0d.part"
    for copy in (left, writing, forgotten, of_another_file):
        copy.touch()
    os.utime(forgotten, (0, time.time() - 2 * 3600))
    save(file, "x")
    assert names_in(tmp_path) == sorted(["cart.toml", writing.name, of_another_file.name])
