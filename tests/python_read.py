"""What ``python_in_script`` knows of the modules it puts over, and small questions it asks of their code."""

from __future__ import annotations

import ast
import json
from collections.abc import Sequence
from dataclasses import dataclass, field

RESERVED = {"default", "in", "new", "with", "delete", "switch", "case", "var", "function", "void", "typeof"}
TYPES = ("tuple", "list", "dict", "Callable", "Literal", "Mapping")


class Refused(Exception):
    """Something that cannot be put over, with its place."""


@dataclass
class Signature:
    """The names a function takes in their order, without ``self``; ``rest`` where it takes any number, after
    which all others must be named."""

    names: list[str]
    rest: bool = False


@dataclass
class Known:
    """What is known of all modules together: how things are called and what they give."""

    classes: set[str] = field(default_factory=set)
    functions: dict[str, list[Signature]] = field(default_factory=dict)
    methods: set[str] = field(default_factory=set)
    fields: set[str] = field(default_factory=set)
    booleans: set[str] = field(default_factory=set)
    tables: set[str] = field(default_factory=set)

    def learn(self, tree: ast.Module) -> None:
        """Take in the classes and functions of a module."""
        for node in ast.walk(tree):
            if isinstance(node, ast.ClassDef):
                self.classes.add(node.name)
                self._learn_class(node)
            elif isinstance(node, ast.FunctionDef):
                self._learn_function(node)
        for node in tree.body:
            if isinstance(node, ast.Assign | ast.AnnAssign) and isinstance(node.value, ast.Dict):
                target = node.targets[0] if isinstance(node, ast.Assign) else node.target
                self.tables |= {target.id} if isinstance(target, ast.Name) else set()

    def _learn_class(self, node: ast.ClassDef) -> None:
        named = [each.target.id for each in fields_of(node) if isinstance(each.target, ast.Name)]
        self.fields.update(named)
        for each in node.body:
            if isinstance(each, ast.FunctionDef):
                if each.name == "__init__":
                    named = signature_of(each).names
                (self.fields if is_property(each) else self.methods).add(each.name)
        self.functions.setdefault(node.name, []).append(Signature(named))

    def _learn_function(self, node: ast.FunctionDef) -> None:
        self.functions.setdefault(node.name, []).append(signature_of(node))
        if isinstance(node.returns, ast.Name) and node.returns.id == "bool":
            self.booleans.add(node.name)


def signature_of(node: ast.FunctionDef) -> Signature:
    """How the function is called."""
    given = [each.arg for each in (*node.args.args, *node.args.kwonlyargs) if each.arg != "self"]
    return Signature(given, node.args.vararg is not None)


def fields_of(node: ast.ClassDef) -> list[ast.AnnAssign]:
    """The fields of a dataclass, in their order."""
    return [each for each in node.body if isinstance(each, ast.AnnAssign)]


def is_property(node: ast.FunctionDef) -> bool:
    """Whether the method is read like a field."""
    named = ("property", "cached_property")
    return any(isinstance(each, ast.Name) and each.id in named for each in node.decorator_list)


def is_type(value: ast.expr) -> bool:
    """Whether the value of an assignment is a type alone, which a script has no use for."""
    if isinstance(value, ast.BinOp):
        return isinstance(value.op, ast.BitOr)
    return isinstance(value, ast.Subscript) and isinstance(value.value, ast.Name) and value.value.id in TYPES


def indented(text: str) -> str:
    """The lines of a script set in by the brackets they stand in."""
    lines, depth = [], 0
    for line in text.splitlines():
        depth -= line.startswith("}")
        lines.append("  " * depth + line)
        depth += line.endswith("{")
    return "\n".join(lines) + "\n"


def safe(name: str) -> str:
    """A name that a script may use."""
    return name + "_" if name in RESERVED else name


def constant(value: object) -> str:
    if value is None or isinstance(value, bool):
        return {None: "null", True: "true", False: "false"}[value]
    if isinstance(value, float):
        return str(int(value)) if value == int(value) and abs(value) < 1e15 else repr(value)
    return json.dumps(value, ensure_ascii=False)


def is_list(node: ast.expr) -> bool:
    """Whether it is a list or tuple by its own form."""
    if isinstance(node, ast.IfExp):
        return is_list(node.body)
    if isinstance(node, ast.Call):
        return isinstance(node.func, ast.Name) and node.func.id in ("list", "tuple")
    return isinstance(node, ast.List | ast.Tuple | ast.ListComp)


def encloses(text: str) -> bool:
    """Whether the first bracket is closed by the last."""
    depth = 0
    for at, sign in enumerate(text):
        depth += (sign in "([{") - (sign in ")]}")
        if depth == 0:
            return at == len(text) - 1
    return False


def assigned(body: Sequence[ast.stmt]) -> list[str]:
    """The names a function gives values to, without those of functions inside it."""
    found: list[str] = []
    for node in body:
        if isinstance(node, ast.FunctionDef):
            continue
        targets: list[ast.expr] = []
        if isinstance(node, ast.Assign):
            targets = node.targets
        elif isinstance(node, ast.AnnAssign | ast.For):
            targets = [node.target]
        for target in targets:
            found += names(target)
        for part in ("body", "orelse"):
            found += assigned(getattr(node, part, []))
    return found


def names(target: ast.expr) -> list[str]:
    if isinstance(target, ast.Tuple):
        return [name for each in target.elts for name in names(each)]
    return [target.id] if isinstance(target, ast.Name) and target.id != "_" else []
