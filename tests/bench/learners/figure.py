"""The figure of simulate.py: how many have truly mastered everything after so many attempts, and how what was foreseen came out."""

WIDE, HIGH, LEFT, TOP, SIDE, GAP = 900, 420, 70, 70, 330, 120
INK, RULE, MODEL, GRID = "#1d2730", "#9a6b1f", "#14606e", "#c9d0d4"


def text(x, y, words, size=13, anchor="start", fill=INK, turn=""):
    return f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" fill="{fill}"{turn}>{words}</text>'


def frame(x0, title, across, up, marks_x, marks_y):
    """Axes with marks given as (share of the side, words)."""
    bottom = TOP + SIDE - 60
    high = bottom - TOP
    parts = [text(x0, TOP - 18, title, 14)]
    for share, words in marks_x:
        x = x0 + share * SIDE
        parts.append(f'<path d="M{x:.1f} {TOP}V{bottom}" stroke="{GRID}"/>' + text(x, bottom + 18, words, 12, "middle"))
    for share, words in marks_y:
        y = bottom - share * high
        parts.append(f'<path d="M{x0} {y:.1f}H{x0 + SIDE}" stroke="{GRID}"/>' + text(x0 - 8, y + 4, words, 12, "end"))
    parts.append(text(x0 + SIDE / 2, bottom + 40, across, 13, "middle"))
    x, y = x0 - 46, TOP + high / 2
    parts.append(text(x, y, up, 13, "middle", turn=f' transform="rotate(-90 {x} {y})"'))
    return parts, bottom, high


def curve(values, most, x0, bottom, high, colour):
    """The share that has arrived by each number of attempts; who never did stands at `most`."""
    whole = len(values)
    points = [f"{x0 + SIDE * n / most:.1f} {bottom - high * sum(v <= n for v in values) / whole:.1f}" for n in range(most)]
    return f'<path d="M{" L".join(points)}" fill="none" stroke="{colour}" stroke-width="2.5"/>'


def draw(rule, model, bins, most, told):
    """The figure as SVG. rule, model: attempts of each learner; bins: (steps, sum of what was foreseen, right)."""
    tenths = [(k / 5, f"{20 * k} %") for k in range(6)]
    parts, bottom, high = frame(LEFT, "All twelve skills truly mastered", "attempts", "learners", [(k / most, str(k)) for k in range(0, most + 1, 40)], tenths)
    parts += [curve(rule, most, LEFT, bottom, high, RULE), curve(model, most, LEFT, bottom, high, MODEL)]
    for k, (colour, words) in enumerate(((MODEL, "learner model"), (RULE, "rule before"))):
        y = bottom - 34 + 18 * k
        parts.append(f'<path d="M{LEFT + SIDE - 128} {y - 4}h22" stroke="{colour}" stroke-width="2.5"/>' + text(LEFT + SIDE - 100, y, words, 12))
    x0 = LEFT + SIDE + GAP
    more, bottom, high = frame(x0, "What was foreseen, and what came", "chance of a right step as foreseen", "came right", tenths, tenths)
    parts += more
    parts.append(f'<path d="M{x0} {bottom}L{x0 + SIDE} {TOP}" stroke="{INK}" stroke-dasharray="4 4"/>')
    most_steps = max(n for n, *_ in bins)
    for n, p, right in bins:
        if n:
            parts.append(f'<circle cx="{x0 + SIDE * p / n:.1f}" cy="{bottom - high * right / n:.1f}" r="{3 + 8 * (n / most_steps) ** 0.5:.1f}" fill="{MODEL}" fill-opacity=".75"/>')
    parts.append(text(LEFT, HIGH - 14, told, 13))
    return (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {HIGH}" width="{WIDE}" height="{HIGH}" font-family="sans-serif">'
            f'<rect width="{WIDE}" height="{HIGH}" fill="#fff"/>{"".join(parts)}</svg>\n')
