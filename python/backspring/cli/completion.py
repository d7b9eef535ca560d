"""`backspring completion`: a script that lets a shell complete commands, options and files."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import dataclass

from backspring.cli import COMMANDS, parser_of
from backspring.cli.answer import Answer
from backspring.report.tables import Report

HAS_UNITS = False
# Names of values that are files or folders.
_FILES = ("FILE", "FOLDER", "DESIGN", "A", "B", "FILE.html")


@dataclass(frozen=True, slots=True)
class _Option:
    """An option of a command: its names, what it means, the words its value may be."""

    names: tuple[str, ...]
    meaning: str
    words: tuple[str, ...]
    value: str | None  # name of its value; None where it takes none

    @property
    def takes_file(self) -> bool:
        return self.value in _FILES


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("shell", choices=tuple(_SHELLS), help="whose script is printed")


def run(options: argparse.Namespace) -> Answer:
    """Write the script from the commands' own parsers, so that it knows what they know."""
    script = "\n".join(_SHELLS[options.shell]())
    return Answer("pass", {"shell": options.shell, "script": script}, Report(script, ()))


def _options(command: str) -> Iterator[_Option]:
    for action in parser_of(command)._actions:
        value = action.metavar or action.dest.upper()
        words = tuple(map(str, action.choices or ()))
        name = value if isinstance(value, str) else value[0]
        meaning = (action.help or "").partition(";")[0].replace("'", "")
        takes = None if action.nargs == 0 else name
        yield _Option(tuple(action.option_strings), meaning, words, takes)


def _bash() -> Iterator[str]:
    yield "# Completion of backspring for bash: put it where bash-completion looks, or source it."
    yield "_backspring() {"
    yield '  local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}"'
    yield '  if [ "$COMP_CWORD" -eq 1 ]; then'
    yield f'    COMPREPLY=($(compgen -W "{" ".join(COMMANDS)} --version" -- "$word")); return'
    yield "  fi"
    yield '  case "${COMP_WORDS[1]} $before" in'
    for command in COMMANDS:
        for option in _options(command):
            for name in option.names:
                if option.value is not None:
                    reply = _bash_value(option)
                    yield f'    "{command} {name}") {reply}; return ;;'
    yield "  esac"
    yield '  local options="" words=""'
    yield '  case "${COMP_WORDS[1]}" in'
    for command in COMMANDS:
        taken = [*_options(command)]
        names = " ".join(name for option in taken for name in option.names)
        words = " ".join(word for option in taken if not option.names for word in option.words)
        yield f'    {command}) options="{names}" words="{words}" ;;'
    yield "  esac"
    yield '  [[ "$word" == -* ]] && words="$options"'
    yield '  COMPREPLY=($(compgen -W "$words" -- "$word"))'
    yield "}"
    yield "complete -o default -F _backspring backspring"


def _bash_value(option: _Option) -> str:
    """Write what may follow an option: one of its words, a file, or what only the user knows."""
    if option.words:
        return f'COMPREPLY=($(compgen -W "{" ".join(option.words)}" -- "$word"))'
    return 'COMPREPLY=($(compgen -f -- "$word"))' if option.takes_file else "COMPREPLY=()"


def _zsh() -> Iterator[str]:
    yield "#compdef backspring"
    yield "# Completion of backspring for zsh: save it as _backspring in a folder of $fpath."
    yield "_backspring() {"
    yield "  if (( CURRENT == 2 )); then"
    helps = " ".join(f"'{name}:{help_line}'" for name, (_, help_line) in COMMANDS.items())
    yield f"    local -a commands=({helps})"
    yield "    _describe command commands; return"
    yield "  fi"
    yield "  local command=$words[2]; shift words; (( CURRENT-- ))"
    yield "  case $command in"
    for command in COMMANDS:
        specs = " ".join(_zsh_spec(option) for option in _options(command))
        yield f"    {command}) _arguments {specs} ;;"
    yield "  esac"
    yield "}"
    yield '_backspring "$@"'


def _zsh_spec(option: _Option) -> str:
    value = ""
    if option.value is not None:
        known = f"({' '.join(option.words)})" if option.words else ""
        value = f":{option.value}:{'_files' if option.takes_file else known}"
    meaning = option.meaning.replace("[", "(").replace("]", ")").replace(":", ",")
    if not option.names:
        return f"'*{value}'"
    return " ".join(f"'*{name}[{meaning}]{value}'" for name in option.names)


def _fish() -> Iterator[str]:
    yield "# Completion of backspring for fish: save it in ~/.config/fish/completions."
    yield "complete -c backspring -f"
    for command, (_, help_line) in COMMANDS.items():
        first = f"complete -c backspring -n __fish_use_subcommand -a {command}"
        yield f"{first} -d '{help_line}'"
    for command in COMMANDS:
        within = f"complete -c backspring -n '__fish_seen_subcommand_from {command}'"
        for option in _options(command):
            words = f" -a '{' '.join(option.words)}'" if option.words else ""
            if not option.names:
                yield within + (words or " -F")
                continue
            names = "".join(map(_fish_name, option.names))
            value = "" if option.value is None else " -r"
            value += " -F" if option.takes_file else ""
            yield f"{within}{names}{value}{words} -d '{option.meaning}'"


def _fish_name(name: str) -> str:
    return f" -l {name[2:]}" if name.startswith("--") else f" -s {name[1:]}"


_SHELLS = {"bash": _bash, "zsh": _zsh, "fish": _fish}
