//! The trace as a drawing of lines and letters in text (SVG 1.1): what the page shows of a recording, for a report.

use super::axes::{self, Theme, hex};
use super::columns;
use super::frame::Frame;
use crate::recording::Recording;
use plotters::prelude::{DrawingBackend, IntoDrawingArea, RGBColor};
use plotters::style::text_anchor::{HPos, VPos};
use plotters_backend::{BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingErrorKind};
use std::convert::Infallible;
use std::fmt::Write as _;

/// Width of the trace, pixels.
const STROKE: f64 = 1.4;

/// What is drawn beside the trace.
#[derive(Clone, Copy, Debug, Default)]
pub struct Over<'a> {
    /// The drawing's title.
    pub title: &'a str,
    /// Cursors, s.
    pub cursors: [Option<f64>; 2],
    /// Beat marks, s.
    pub marks: &'a [f64],
    /// What else is to be known of it, in a line at the top of the plot; empty for nothing.
    pub caption: &'a str,
    /// The unit of the values is not known.
    pub plain: bool,
}

/// A recording in a frame. The frame's `dpr` should be 1.
pub fn picture(recording: &Recording, frame: &Frame, theme: &Theme, over: &Over) -> String {
    let (width, height) = (frame.left + frame.width + 10.0, frame.top + frame.height + 30.0);
    let mut text = String::with_capacity(1 << 16);
    let out = &mut text;
    put(
        out,
        format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" \
         height=\"{height}\" font-family=\"{}\" role=\"img\">\n<title>{}</title>\n",
            escaped(&theme.font),
            escaped(over.title)
        ),
    );
    put(
        out,
        format_args!(
            "<rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>\n<g transform=\"translate(.5 .5)\">\n",
            hex(theme.ground)
        ),
    );
    // The pen cannot fail.
    let pen = Pen { text: out, size: (width as u32, height as u32), theme };
    let _ = axes::draw(&pen.into_drawing_area(), frame, theme, over.plain);
    put(
        out,
        format_args!(
            "</g>\n<clipPath id=\"plot\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/></clipPath>\n",
            frame.left, frame.top, frame.width, frame.height
        ),
    );
    put(
        out,
        format_args!(
            "<path clip-path=\"url(#plot)\" fill=\"none\" stroke=\"{}\" stroke-width=\"{STROKE}\" \
         stroke-linejoin=\"bevel\" d=\"",
            hex(theme.ink)
        ),
    );
    trace(out, recording, frame);
    out.push_str("\"/>\n");
    let shown = |t: &f64| (frame.t0..=frame.t1).contains(t);
    let (accent, bottom) = (hex(theme.accent), frame.top + frame.height);
    for t in over.marks.iter().filter(|t| shown(t)) {
        let x = frame.x(*t);
        put(out, format_args!("<path fill=\"{accent}\" d=\"M{x:.1} {:.1}l-4 -7h8z\"/>\n", frame.top + 9.0));
    }
    for (t, name) in over.cursors.iter().zip(["A", "B"]) {
        let Some(x) = t.filter(shown).map(|t| frame.x(t)) else { continue };
        put(
            out,
            format_args!(
                "<path stroke=\"{accent}\" d=\"M{x:.1} {}V{bottom}\"/><text x=\"{:.1}\" y=\"{:.1}\" font-size=\"13\" \
             font-weight=\"bold\" fill=\"{accent}\">{name}</text>\n",
                frame.top,
                x + 4.0,
                bottom - 6.0
            ),
        );
    }
    if !over.caption.is_empty() {
        put(
            out,
            format_args!(
                "<text x=\"{:.1}\" y=\"{:.1}\" font-size=\"12\" fill=\"{}\">{}</text>\n",
                frame.left + 6.0,
                frame.top + 26.0,
                hex(theme.axis),
                escaped(over.caption)
            ),
        );
    }
    text.push_str("</svg>\n");
    text
}

/// The trace as a path: sample by sample, or where there are many, over the lowest and highest of each column.
fn trace(out: &mut String, recording: &Recording, frame: &Frame) {
    let rate = recording.rate_hz();
    let mut way = 'M';
    let mut point = |x: f64, v: f64| {
        put(out, format_args!("{way}{x:.1} {:.1}", frame.y(v)));
        way = 'L';
    };
    if (frame.t1 - frame.t0) * rate < 1.5 * frame.width {
        let from = recording.sample_at(frame.t0).saturating_sub(1);
        let to = recording.sample_at(frame.t1) + 2;
        for (k, v) in recording.values(from, to).iter().enumerate() {
            point(frame.x((from + k) as f64 / rate), *v);
        }
        return;
    }
    for column in columns::of_recording(recording, frame) {
        let x = frame.left + column.x as f64 + 0.5;
        let falling = column.last < column.first;
        let (near, far) = if falling { (column.max, column.min) } else { (column.min, column.max) };
        point(x, f64::from(near));
        if near != far {
            point(x, f64::from(far));
        }
    }
}

/// Text that may stand between tags and in attributes.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // XML 1.0, production 2, has no place for them.
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// Writes what the axes draw.
struct Pen<'a> {
    text: &'a mut String,
    size: (u32, u32),
    theme: &'a Theme,
}

fn put(out: &mut String, words: std::fmt::Arguments) {
    // Writing to a String cannot fail.
    let _ = out.write_fmt(words);
}

fn colour(c: BackendColor) -> String {
    hex(RGBColor(c.rgb.0, c.rgb.1, c.rgb.2))
}

impl DrawingBackend for Pen<'_> {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Result<(), DrawingErrorKind<Infallible>> {
        Ok(())
    }

    fn present(&mut self) -> Result<(), DrawingErrorKind<Infallible>> {
        Ok(())
    }

    fn draw_pixel(&mut self, _: BackendCoord, _: BackendColor) -> Result<(), DrawingErrorKind<Infallible>> {
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Result<(), DrawingErrorKind<Infallible>> {
        let mut d = String::new();
        for (x, y) in path {
            let _ = write!(d, "{}{x} {y}", if d.is_empty() { 'M' } else { 'L' });
        }
        put(
            self.text,
            format_args!(
                "<path fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" d=\"{d}\"/>\n",
                colour(style.color()),
                style.stroke_width()
            ),
        );
        Ok(())
    }

    fn draw_line<S: BackendStyle>(
        &mut self,
        from: BackendCoord,
        to: BackendCoord,
        style: &S,
    ) -> Result<(), DrawingErrorKind<Infallible>> {
        self.draw_path([from, to], style)
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        a: BackendCoord,
        b: BackendCoord,
        style: &S,
        _fill: bool,
    ) -> Result<(), DrawingErrorKind<Infallible>> {
        put(
            self.text,
            format_args!(
                "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\"/>\n",
                a.0,
                a.1,
                b.0 - a.0,
                b.1 - a.1,
                colour(style.color())
            ),
        );
        Ok(())
    }

    fn draw_text<T: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &T,
        (x, y): BackendCoord,
    ) -> Result<(), DrawingErrorKind<Infallible>> {
        let (anchor, size) = (style.anchor(), style.size());
        let across = match anchor.h_pos {
            HPos::Left => "start",
            HPos::Center => "middle",
            HPos::Right => "end",
        };
        // From the anchor down to the foot of the figures, which are .72 of the size high.
        let down = match anchor.v_pos {
            VPos::Top => 0.86,
            VPos::Center => 0.36,
            VPos::Bottom => -0.14,
        };
        put(
            self.text,
            format_args!(
                "<text x=\"{x}\" y=\"{:.1}\" text-anchor=\"{across}\" font-size=\"{size}\" fill=\"{}\">{}</text>\n",
                f64::from(y) + down * size,
                hex(self.theme.axis),
                escaped(text)
            ),
        );
        Ok(())
    }

    fn estimate_text_size<T: BackendTextStyle>(
        &self,
        text: &str,
        style: &T,
    ) -> Result<(u32, u32), DrawingErrorKind<Infallible>> {
        Ok(((0.6 * style.size() * text.chars().count() as f64) as u32, style.size() as u32))
    }
}
