//! The look of the charts: the colours of the trace's two themes, lettering and scale. The colours are those of the
//! page's style sheet (www/css/tokens.css), so that a chart in a file looks like the trace on the page.

use crate::trace::axes::Theme;
use plotters::style::RGBColor;

/// Upright letters, for numbers: the page's own list of families.
const SANS: &str =
    "Seravek, Gill Sans Nova, Ubuntu, Segoe UI, Noto Sans, Carlito, Liberation Sans, sans-serif";
/// Letters for notes, drawn in italic.
const SERIF: &str = "Iowan Old Style, Palatino Linotype, Palatino, URW Palladio L, P052, Book Antiqua, Georgia, \
                     Liberation Serif, serif";

/// How charts look.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// Colours of the plot, family of the numbers, decimal sign.
    pub theme: Theme,
    /// Colour of the sheet about the plot; none leaves what is there, as on the page.
    pub sheet: Option<RGBColor>,
    /// Families of the notes.
    pub serif: String,
    /// Device pixels in a CSS pixel, above 0.
    pub dpr: f64,
}

impl Look {
    /// Ivory on near black, for the screen.
    pub fn dark() -> Self {
        Self {
            theme: Theme {
                ground: RGBColor(0x13, 0x0d, 0x0a),
                grid: RGBColor(0x33, 0x27, 0x1f),
                axis: RGBColor(0xb7, 0xa5, 0x8b),
                ink: RGBColor(0xf4, 0xea, 0xd6),
                accent: RGBColor(0xea, 0xa6, 0x40),
                font: SANS.into(),
                decimal: '.',
            },
            sheet: Some(RGBColor(0x22, 0x1a, 0x16)),
            serif: SERIF.into(),
            dpr: 1.0,
        }
    }

    /// Ink on cream, for print and bright rooms.
    pub fn light() -> Self {
        Self {
            theme: Theme {
                ground: RGBColor(0xfd, 0xf8, 0xec),
                grid: RGBColor(0xe8, 0xdc, 0xc3),
                axis: RGBColor(0x6d, 0x5c, 0x4a),
                ink: RGBColor(0x1e, 0x2a, 0x38),
                accent: RGBColor(0x8a, 0x4f, 0x08),
                font: SANS.into(),
                decimal: '.',
            },
            sheet: Some(RGBColor(0xf6, 0xef, 0xdf)),
            serif: SERIF.into(),
            dpr: 1.0,
        }
    }

    /// The same look with `dpr` device pixels in a CSS pixel.
    pub fn at(mut self, dpr: f64) -> Self {
        self.dpr = dpr;
        self
    }
}
