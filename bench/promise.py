"""What a measured promise is, and how it reads in a table."""

from dataclasses import asdict, dataclass, field

from measuring import growth


@dataclass
class Promise:
    what: str                 # "a fit, one form in one bead"
    promised: str             # as a person reads it: "1 ms", "linear"
    command: str              # that measures it
    sizes: list = field(default_factory=list)        # numbers; none where there is only one
    unit: str = ""                                   # of the sizes
    took: list = field(default_factory=list)         # seconds, one a size
    beside: str = ""                                 # the reference
    reference: list = field(default_factory=list)    # seconds, one a size
    limit: float | None = None                       # seconds, at the largest size
    growth_limit: float | None = None                # of the exponent
    other: str = ""                                  # a figure that is no time: "71 MB"
    met: bool = True                                 # of that figure

    def grown(self):
        return growth(self.sizes, self.took) if len(self.sizes) > 1 else None

    def kept(self):
        """Whether the promise is met."""
        in_time = self.limit is None or self.took[-1] <= self.limit
        in_order = self.growth_limit is None or self.grown() <= self.growth_limit
        return bool(self.met and in_time and in_order)

    def record(self):
        grown = self.grown()
        return rounded({**asdict(self), "growth": grown, "kept": self.kept(),
                        "ratios": [ours / theirs for ours, theirs in zip(self.took, self.reference)]})


def rounded(value):
    """Four figures are more than any of this is known to."""
    if isinstance(value, dict):
        return {key: rounded(one) for key, one in value.items()}
    if isinstance(value, list):
        return [rounded(one) for one in value]
    return float(f"{value:.4g}") if isinstance(value, float) else value


def seconds_text(seconds):
    for unit, size in (("s", 1), ("ms", 1e-3), ("µs", 1e-6), ("ns", 1e-9)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds:.2g} s"


def ratio_text(ratio):
    return f"{ratio:.3g}" if 0.001 <= ratio < 1000 else f"{ratio:.1e}"


HEADS = ["promise", "sizes", "took", "promised", "kept", "beside", "ratio", "growth"]


def row(record):
    """One promise's cells. Ratios stand in the order of the sizes; the time is the largest size's."""
    figures = [seconds_text(record["took"][-1])] if record["took"] else []
    figures += [record["other"]] if record["other"] else []
    sizes = " / ".join(f"{size:,}" if isinstance(size, int) else str(size) for size in record["sizes"])
    return [record["what"], f"{sizes} {record['unit']}".strip(), ", ".join(figures), record["promised"], "yes" if record["kept"] else "NO",
            record["beside"], " / ".join(ratio_text(ratio) for ratio in record["ratios"]),
            f"{record['growth']:.2f}" if record["growth"] is not None else ""]


def plain_table(records):
    rows = [HEADS] + [row(record) for record in records]
    widths = [max(len(cells[i]) for cells in rows) for i in range(len(HEADS))]
    return "\n".join("  ".join(cell.ljust(width) for cell, width in zip(cells, widths)).rstrip() for cells in rows)


def markdown_table(records):
    lines = ["| promise | sizes | took, at the largest | promised | kept | beside | times that, a size | growth | command | on |",
             "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |"]
    for record in records:
        lines.append("| " + " | ".join([*row(record), f"`{record['command']}`", record["date"]]) + " |")
    return "\n".join(lines) + "\n"
