"""Plain Python put into plain JavaScript, statement by statement, for drawing that runs on both sides.

It knows what ``drawing/`` is written in and no more: functions, dataclasses, tuples, lists and dicts, string
and number arithmetic. Whatever it does not know it refuses by file and line, so that nothing is put over by
guess. What Python's own words mean in a browser (``round`` to even, what counts as true, tables, keyword
arguments after a star) is in ``site/assets/flat-words.js``.

The limits that nothing refuses: ``or`` between values takes an empty list for true, and a middle operand
of ``a < b < c`` is worked out twice.
"""

from __future__ import annotations

import ast
import json
from collections.abc import Iterable, Sequence

from python_read import (
    Known,
    Refused,
    assigned,
    constant,
    encloses,
    fields_of,
    is_list,
    is_property,
    safe,
)

BINARY: dict[type[ast.operator], str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
COMPARED: dict[type[ast.cmpop], str] = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
MATHS = {
    "sin": "Math.sin",
    "cos": "Math.cos",
    "sqrt": "Math.sqrt",
    "floor": "Math.floor",
    "ceil": "Math.ceil",
}
BUILT_IN = {
    "abs": "Math.abs",
    "float": "Number",
    "int": "Math.trunc",
    "repr": "String",
    "str": "String",
    **{name: name for name in ("enumerate", "escape", "pairwise", "range", "replace", "round", "zip")},
    **{name: name for name in ("bisect_left", "bisect_right", "reversed", "sorted")},
}
METHODS = {
    "append": "push",
    "endswith": "endsWith",
    "index": "indexOf",
    "items": "entries",
    "lstrip": "trimStart",
    "replace": "replaceAll",
    "strip": "trim",
    "upper": "toUpperCase",
}
HELPED = ("get", "partition", "rstrip", "setdefault")
"""Methods of built-in types whose meaning is a function of ``flat-words.js``."""


class Script:
    """Puts one module over; ``modules`` are the names by which it knows others."""

    def __init__(self, file: str, known: Known, modules: Iterable[str]) -> None:
        self.file, self.known, self.modules = file, known, set(modules)

    def refuse(self, node: ast.AST) -> Refused:
        """What to raise for a construct that is not known."""
        line, words = getattr(node, "lineno", "?"), ast.unparse(node)[:80]
        return Refused(f"{self.file}:{line}: not known how to put this into a script: {words}")

    # ---- statements

    def definition(self, node: ast.stmt) -> str:
        """A statement of the module itself."""
        if isinstance(node, ast.FunctionDef):
            return self.function(node)
        if isinstance(node, ast.ClassDef):
            return self.a_class(node)
        if isinstance(node, ast.AnnAssign) and node.value is not None:
            return f"const {self.target(node.target)} = {self.value(node.value)};"
        if isinstance(node, ast.Assign):
            return f"const {self.target(node.targets[0])} = {self.value(node.value)};"
        raise self.refuse(node)

    def a_class(self, node: ast.ClassDef) -> str:
        """A class: a dataclass takes its fields in order."""
        parts = []
        fields = fields_of(node)
        if fields:
            taken = ", ".join(self.field(each) for each in fields)
            sets = " ".join(f"this.{self.attribute(each)} = {self.target(each.target)};" for each in fields)
            parts.append(f"constructor({taken}) {{ {sets} }}")
        for each in node.body:
            if isinstance(each, ast.FunctionDef) and each.name != "__call__":
                kind = "get " if is_property(each) else ""
                name = "constructor" if each.name == "__init__" else each.name
                parts.append(f"{kind}{name}({self.parameters(each.args)}) {{\n{self.body(each)}\n}}")
        return f"class {node.name} {{\n" + "\n".join(parts) + "\n}"

    def attribute(self, node: ast.AnnAssign) -> str:
        if not isinstance(node.target, ast.Name):
            raise self.refuse(node)
        return node.target.id

    def field(self, node: ast.AnnAssign) -> str:
        name, value = self.target(node.target), node.value
        if value is None:
            return name
        if isinstance(value, ast.Call) and isinstance(value.func, ast.Name) and value.func.id == "field":
            given = {each.arg: each.value for each in value.keywords}
            if "default" in given:
                return f"{name} = {self.value(given['default'])}"
            made = given["default_factory"]
            if not isinstance(made, ast.Name):
                raise self.refuse(value)
            return name + " = " + {"list": "[]", "dict": "new Map()"}.get(made.id, f"new {made.id}()")
        return f"{name} = {self.value(value)}"

    def function(self, node: ast.FunctionDef) -> str:
        star = "*" if any(isinstance(each, ast.Yield | ast.YieldFrom) for each in ast.walk(node)) else ""
        return f"function{star} {node.name}({self.parameters(node.args)}) {{\n{self.body(node)}\n}}"

    def parameters(self, given: ast.arguments) -> str:
        """As a script takes them; what comes after a star is in the last argument, see ``body``."""
        names = [each.arg for each in given.args]
        plain = [None] * (len(names) - len(given.defaults)) + list(given.defaults)
        pairs = [(name, value) for name, value in zip(names, plain, strict=True) if name != "self"]
        if given.vararg is None:
            pairs += [
                (each.arg, value) for each, value in zip(given.kwonlyargs, given.kw_defaults, strict=True)
            ]
        taken = [safe(name) + (f" = {self.value(value)}" if value else "") for name, value in pairs]
        return ", ".join(taken + ([f"...{given.vararg.arg}"] if given.vararg else []))

    def body(self, node: ast.FunctionDef) -> str:
        """The statements of a function, its own variables named at the top."""
        lines = []
        if node.args.vararg is not None and node.args.kwonlyargs:
            pairs = zip(node.args.kwonlyargs, node.args.kw_defaults, strict=True)
            named = ", ".join(f"{each.arg} = {self.value(value)}" for each, value in pairs if value)
            lines.append(f"const {{ {named} }} = named({node.args.vararg.arg});")
        taken = {each.arg for each in ast.walk(node.args) if isinstance(each, ast.arg)}
        own = [safe(name) for name in dict.fromkeys(assigned(node.body)) if name not in taken]
        if own:
            lines.append(f"let {', '.join(own)};")
        return "\n".join(lines + [text for each in node.body if (text := self.statement(each))])

    def block(self, body: Sequence[ast.stmt]) -> str:
        return "{\n" + "\n".join(text for each in body if (text := self.statement(each))) + "\n}"

    def statement(self, node: ast.stmt) -> str:
        """One statement; an empty text for what only types and notes are made of."""
        match node:
            case ast.Expr(value=ast.Constant()) | ast.Assert() | ast.Pass():
                return ""
            case ast.Expr(value=ast.Yield(value=value)) if value:
                return f"yield {self.value(value)};"
            case ast.Expr(value=ast.YieldFrom(value=value)):
                return f"yield* {self.value(value)};"
            case ast.Expr(value=value):
                return self.value(value) + ";"
            case ast.Return(value=value):
                return f"return {self.value(value)};" if value else "return;"
            case ast.Continue():
                return "continue;"
            case ast.Break():
                return "break;"
            case ast.Raise(exc=ast.Call(args=[words])):
                return f"throw new Error({self.value(words)});"
            case ast.Assign(targets=targets, value=value):
                return "".join(self.assignment(each, self.value(value)) for each in targets)
            case ast.AnnAssign(target=target, value=value):
                return self.assignment(target, self.value(value)) if value else ""
            case ast.AugAssign(target=target, op=ast.Add(), value=value) if is_list(value):
                return f"{self.value(target)}.push(...{self.value(value)});"
            case ast.AugAssign(target=target, op=op, value=value) if type(op) in BINARY:
                return f"{self.value(target)} {BINARY[type(op)]}= {self.value(value)};"
            case ast.If(test=test, body=body, orelse=other):
                tail = ""
                if len(other) == 1 and isinstance(other[0], ast.If):
                    tail = " else " + self.statement(other[0])
                elif other:
                    tail = " else " + self.block(other)
                return f"if ({self.test(test)}) {self.block(body)}{tail}"
            case ast.For(target=target, iter=values, body=body, orelse=[]):
                return f"for ({self.target(target)} of {self.row(values)}) {self.block(body)}"
            case ast.While(test=test, body=body, orelse=[]):
                return f"while ({self.test(test)}) {self.block(body)}"
            case ast.FunctionDef(name=name):
                return f"const {name} = ({self.parameters(node.args)}) => {{\n{self.body(node)}\n}};"
        raise self.refuse(node)

    def assignment(self, target: ast.expr, value: str) -> str:
        if isinstance(target, ast.Subscript):
            return f"{self.value(target.value)}.set({self.value(target.slice)}, {value});"
        return f"{self.target(target)} = {value};"

    def target(self, node: ast.expr) -> str:
        """What is assigned to: a name, a field, or a row of them."""
        if isinstance(node, ast.Tuple):
            return "[" + ", ".join(self.target(each) for each in node.elts) + "]"
        if isinstance(node, ast.Name):
            return "" if node.id == "_" else safe(node.id)
        if isinstance(node, ast.Attribute):
            return self.value(node)
        raise self.refuse(node)

    # ---- values

    def test(self, node: ast.expr) -> str:
        """A value of which only matters whether Python takes it for true."""
        match node:
            case ast.BoolOp(op=op, values=values):
                sign = " && " if isinstance(op, ast.And) else " || "
                return "(" + sign.join(self.test(each) for each in values) + ")"
            case ast.UnaryOp(op=ast.Not(), operand=operand):
                return "!" + self.test(operand)
            case ast.Compare() | ast.Constant(value=bool()):
                return self.inner(node)
            case ast.Call(func=ast.Name(id=name)) if name in self.known.booleans | {
                "any",
                "all",
                "isinstance",
            }:
                return self.value(node)
            case ast.Call(func=ast.Attribute(attr=name)) if name in self.known.booleans | {"endswith"}:
                return self.value(node)
        return f"truth({self.value(node)})"

    def inner(self, node: ast.expr) -> str:
        """A value as part of another."""
        closed = (ast.Name, ast.Attribute, ast.Call, ast.Constant, ast.Subscript, ast.Tuple, ast.List)
        text = self.value(node)
        return text if isinstance(node, closed) or (text.startswith("(") and encloses(text)) else f"({text})"

    def value(self, node: ast.expr) -> str:
        """The value of an expression."""
        match node:
            case ast.Constant(value=value):
                return constant(value)
            case ast.Name(id="self"):
                return "this"
            case ast.Name(id=name):
                return safe(name)
            case ast.Tuple(elts=elts) | ast.List(elts=elts):
                return "[" + ", ".join(self.value(each) for each in elts) + "]"
            case ast.Starred(value=value):
                return "..." + self.row(value)
            case ast.Dict(keys=keys, values=values):
                pairs = [
                    f"[{self.value(key)}, {self.value(each)}]" if key else "..." + self.inner(each)
                    for key, each in zip(keys, values, strict=True)
                ]
                return "new Map([" + ", ".join(pairs) + "])"
            case ast.JoinedStr(values=values):
                return "`" + "".join(self.part_of_text(each) for each in values) + "`"
            case ast.Attribute():
                return self.read(node)
            case ast.Subscript():
                return self.subscript(node)
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return "-" + self.inner(operand)
            case ast.UnaryOp(op=ast.Not()):
                return self.test(node)
            case ast.BoolOp(op=op, values=values):
                return (" && " if isinstance(op, ast.And) else " || ").join(
                    self.inner(each) for each in values
                )
            case ast.IfExp(test=test, body=body, orelse=other):
                return f"{self.test(test)} ? {self.inner(body)} : {self.inner(other)}"
            case ast.Lambda(args=args, body=body):
                return f"({self.parameters(args)}) => {self.inner(body)}"
            case ast.ListComp() | ast.GeneratorExp():
                return self.comprehension(node)
            case ast.BinOp():
                return self.arithmetic(node)
            case ast.Compare(left=left, ops=ops, comparators=rights):
                terms = [left, *rights]
                pairs = [self.compare(terms[at], op, terms[at + 1]) for at, op in enumerate(ops)]
                return pairs[0] if len(pairs) == 1 else "(" + " && ".join(pairs) + ")"
            case ast.Call():
                return self.call(node)
        raise self.refuse(node)

    def row(self, node: ast.expr) -> str:
        """Something gone through one by one: a table gives its keys in Python, and pairs in a script."""
        if isinstance(node, ast.Name) and node.id in self.known.tables:
            raise self.refuse(node)
        return self.inner(node)

    def part_of_text(self, node: ast.expr) -> str:
        if isinstance(node, ast.Constant):
            return (
                json.dumps(str(node.value), ensure_ascii=False)[1:-1].replace('\\"', '"').replace("`", "\\`")
            )
        if isinstance(node, ast.FormattedValue) and node.format_spec is None and node.conversion == -1:
            return "${" + self.value(node.value) + "}"
        raise self.refuse(node)

    def read(self, node: ast.Attribute) -> str:
        """A field; a method that is not called here keeps what it belongs to."""
        if isinstance(node.value, ast.Name) and node.value.id == "math":
            return {"tau": "2 * Math.PI", "pi": "Math.PI"}[node.attr]
        held = self.inner(node.value)
        of_module = isinstance(node.value, ast.Name) and node.value.id in self.modules
        if node.attr in self.known.methods - self.known.fields and not of_module:
            return f'bound({held}, "{node.attr}")'
        return f"{held}.{node.attr}"

    def subscript(self, node: ast.Subscript) -> str:
        held = self.inner(node.value)
        match node.slice:
            case ast.Slice(lower=low, upper=high, step=None):
                ends = [self.value(low) if low else "0", *([self.value(high)] if high else [])]
                return f"{held}.slice({', '.join(ends)})"
            case ast.Constant(value=int() as at):
                return f"{held}[{at}]"
            case ast.UnaryOp(op=ast.USub(), operand=ast.Constant(value=at)):
                return f"{held}.at(-{at})"
        return f"item({held}, {self.value(node.slice)})"

    def arithmetic(self, node: ast.BinOp) -> str:
        left, right = node.left, node.right
        if isinstance(node.op, ast.Add) and (is_list(left) or is_list(right)):
            return f"[...{self.inner(left)}, ...{self.inner(right)}]"
        if isinstance(node.op, ast.FloorDiv):
            return f"Math.floor({self.inner(left)} / {self.inner(right)})"
        if isinstance(node.op, ast.Mod):
            return f"mod({self.value(left)}, {self.value(right)})"
        if type(node.op) not in BINARY:
            raise self.refuse(node)
        return f"{self.inner(left)} {BINARY[type(node.op)]} {self.inner(right)}"

    def compare(self, left: ast.expr, op: ast.cmpop, right: ast.expr) -> str:
        a, b = self.inner(left), self.inner(right)
        if type(op) in COMPARED:
            return f"{a} {COMPARED[type(op)]} {b}"
        if isinstance(op, ast.In | ast.NotIn):
            found = f"{b}.includes({a})" if is_list(right) else f"has({b}, {a})"
            return found if isinstance(op, ast.In) else "!" + found
        no = "!" if isinstance(op, ast.NotEq | ast.IsNot) else "="
        if isinstance(right, ast.Constant) and right.value is None:
            return f"{a} {no}= null"
        plain = isinstance(op, ast.Is | ast.IsNot) or any(
            isinstance(each, ast.Constant | ast.Compare | ast.BinOp) for each in (left, right)
        )
        return f"{a} {no}== {b}" if plain else ("!" if no == "!" else "") + f"same({a}, {b})"

    def comprehension(self, node: ast.ListComp | ast.GeneratorExp) -> str:
        text = ""
        for depth, each in enumerate(reversed(node.generators)):
            target = self.target(each.target) or "_"
            held = f"[...{self.row(each.iter)}]"
            for condition in each.ifs:
                held += f".filter(({target}) => {self.test(condition)})"
            made = self.inner(node.elt) if depth == 0 else text
            text = f"{held}.{'flatMap' if depth else 'map'}(({target}) => {made})"
        return text

    # ---- calls

    def call(self, node: ast.Call) -> str:
        """A call, with its named arguments put where they belong."""
        match node.func:
            case ast.Name(id="max" | "min" as name):
                return self.largest(name, node)
            case ast.Name(id="any" | "all" as name):
                return f"{self.value(node.args[0])}.{'some' if name == 'any' else 'every'}(truth)"
            case ast.Name(id="len"):
                return self.inner(node.args[0]) + ".length"
            case ast.Name(id="bool"):
                return f"truth({self.value(node.args[0])})"
            case ast.Name(id="list" | "tuple"):
                return f"[...{self.inner(node.args[0])}]"
            case ast.Name(id="dict"):
                return f"new Map({self.value(node.args[0])})"
            case ast.Name(id="map"):
                return f"[...{self.inner(node.args[1])}].map((each) => {self.inner(node.args[0])}(each))"
            case ast.Name(id="isinstance"):
                return self.kind_of(node)
            case ast.Name(id="replace"):
                changes = ", ".join(f"{each.arg}: {self.value(each.value)}" for each in node.keywords)
                return f"replace({self.value(node.args[0])}, {{ {changes} }})"
            case ast.Attribute(value=ast.Name(id="math"), attr=name) if name in MATHS:
                return f"{MATHS[name]}({self.arguments(node, name)})"
            case ast.Attribute(value=ast.Name(id="math" | "itertools"), attr="radians" | "pairwise" as name):
                return f"{name}({self.arguments(node, name)})"
            case ast.Attribute(value=ast.Name(id="dict"), attr="fromkeys"):
                return f"[...new Set({self.value(node.args[0])})]"
            case ast.Attribute(value=joint, attr="join"):
                return f"{self.inner(node.args[0])}.join({self.value(joint)})"
            case ast.Attribute(value=held, attr=name) if name in HELPED:
                return f"{name}({self.value(held)}, {self.arguments(node, name)})"
            case ast.Attribute(value=held, attr=name):
                own = name in self.known.functions or name in self.known.fields
                if not own and name not in METHODS:
                    raise self.refuse(node)
                return f"{self.inner(held)}.{name if own else METHODS[name]}({self.arguments(node, name)})"
            case ast.Name(id=name) if name in self.known.classes:
                return f"new {name}({self.arguments(node, name)})"
            case ast.Name(id=name):
                return f"{BUILT_IN.get(name, safe(name))}({self.arguments(node, name)})"
            case ast.Call() | ast.Subscript():
                return f"{self.inner(node.func)}({self.arguments(node, '')})"
        raise self.refuse(node)

    def largest(self, name: str, node: ast.Call) -> str:
        if len(node.args) == 1 and not isinstance(node.args[0], ast.Starred):
            default = [self.value(each.value) for each in node.keywords if each.arg == "default"]
            return f"{name}Of({', '.join([self.value(node.args[0]), *default])})"
        return f"Math.{name}({', '.join(self.value(each) for each in node.args)})"

    def kind_of(self, node: ast.Call) -> str:
        held, kind = node.args
        if isinstance(kind, ast.BinOp) and ast.unparse(kind) == "int | float":
            return f'typeof {self.inner(held)} === "number"'
        if isinstance(kind, ast.Name) and kind.id == "int":
            return f"Number.isInteger({self.value(held)})"
        if isinstance(kind, ast.Name) and kind.id == "str":
            return f'(typeof {self.inner(held)} === "string" || {self.inner(held)} instanceof Markup)'
        return f"{self.inner(held)} instanceof {self.value(kind)}"

    def arguments(self, node: ast.Call, name: str) -> str:
        """The arguments in the order the function takes them."""
        given = [self.value(each) for each in node.args]
        named = {
            each.arg: self.value(each.value) for each in node.keywords if each.arg and each.arg != "strict"
        }
        if not named:
            return ", ".join(given)
        ways = self.known.functions.get(name, [])
        ways = [each for each in ways if set(named) <= set(each.names)]
        if not ways or any(each.names != ways[0].names for each in ways):
            raise self.refuse(node)
        if ways[0].rest:
            return ", ".join(
                [*given, "new Named({ " + ", ".join(f"{k}: {v}" for k, v in named.items()) + " })"]
            )
        left = ways[0].names[len(given) :]
        last = max(left.index(each) for each in named)
        return ", ".join(given + [named.get(each, "undefined") for each in left[: last + 1]])
