//! A plotters backend that paints into a picture in memory, with letters from an embedded font: it needs no system
//! library and no font on the machine. Coordinates come in finer steps than pixels, so that slopes are smooth.

use dejavu::{sans, serif};
use plotters_backend::text_anchor::{HPos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind, FontStyle,
    FontTransform,
};
use thiserror::Error;
use tiny_skia::{
    Color, FillRule, LineCap, LineJoin, Paint, Path, PathBuilder, Pixmap, Rect, Stroke, Transform,
};
use ttf_parser::{Face, OutlineBuilder};

/// Why a picture could not be made.
#[derive(Clone, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum RasterError {
    /// No picture has such a size.
    #[error("no picture can be {width} by {height} pixels large")]
    Size {
        /// Width asked for.
        width: u32,
        /// Height asked for.
        height: u32,
    },
    /// The embedded font cannot be read.
    #[error("the embedded font: {0}")]
    Font(String),
    /// The picture cannot be written as PNG.
    #[error("writing PNG: {0}")]
    Png(String),
}

/// The picture.
pub struct Raster {
    pixels: Pixmap,
    fine: u32,
    upright: Face<'static>,
    italic: Face<'static>,
}

/// A size in plotters is so many times the em that letters get, in all of plotters' backends.
const SIZE_IN_EM: f32 = 1.24;

type Done = Result<(), DrawingErrorKind<RasterError>>;

impl Raster {
    /// A black picture of `width` by `height` pixels, each `fine` (1 or more) steps of coordinates wide and high.
    pub fn new(width: u32, height: u32, fine: u32) -> Result<Self, RasterError> {
        let pixels = Pixmap::new(width, height).ok_or(RasterError::Size { width, height })?;
        let face = |bytes| Face::parse(bytes, 0).map_err(|error| RasterError::Font(error.to_string()));
        let mut made = Self {
            pixels,
            fine: fine.max(1),
            upright: face(sans::regular())?,
            italic: face(serif::italic())?,
        };
        made.pixels.fill(Color::BLACK);
        Ok(made)
    }

    /// The picture as a PNG file.
    pub fn png(&self) -> Result<Vec<u8>, RasterError> {
        self.pixels.encode_png().map_err(|error| RasterError::Png(error.to_string()))
    }

    fn pixel(&self, v: i32) -> f32 {
        v as f32 / self.fine as f32
    }

    fn fill(&mut self, path: Option<Path>, colour: BackendColor) -> Done {
        if let Some(path) = path {
            let way = Transform::identity();
            self.pixels.fill_path(&path, &paint(colour), FillRule::Winding, way, None);
        }
        Ok(())
    }

    fn polyline(&self, points: &[BackendCoord]) -> PathBuilder {
        let mut path = PathBuilder::new();
        for (k, (x, y)) in points.iter().enumerate() {
            let (x, y) = (self.pixel(*x), self.pixel(*y));
            if k == 0 { path.move_to(x, y) } else { path.line_to(x, y) }
        }
        path
    }

    fn stroke<S: BackendStyle>(&mut self, points: &[BackendCoord], style: &S) -> Done {
        let width = style.stroke_width() as f32 / self.fine as f32;
        // Level and upright lines lie on whole pixels: the grid is crisp.
        if let [(x0, y0), (x1, y1)] = *points {
            let whole = width.round().max(1.0);
            let (a, b) = (
                (self.pixel(x0.min(x1)), self.pixel(y0.min(y1))),
                (self.pixel(x0.max(x1)), self.pixel(y0.max(y1))),
            );
            let snap = |v: f32| (v - whole / 2.0).round();
            let rect = if x0 == x1 {
                Rect::from_xywh(snap(a.0), a.1, whole, b.1 - a.1)
            } else if y0 == y1 {
                Rect::from_xywh(a.0, snap(a.1), b.0 - a.0, whole)
            } else {
                None
            };
            if let Some(rect) = rect {
                return self.fill(Some(PathBuilder::from_rect(rect)), style.color());
            }
        }
        let stroke =
            Stroke { width, line_cap: LineCap::Round, line_join: LineJoin::Round, ..Stroke::default() };
        if let Some(path) = self.polyline(points).finish() {
            self.pixels.stroke_path(&path, &paint(style.color()), &stroke, Transform::identity(), None);
        }
        Ok(())
    }
}

fn paint(colour: BackendColor) -> Paint<'static> {
    let (r, g, b) = colour.rgb;
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color_rgba8(r, g, b, (colour.alpha.clamp(0.0, 1.0) * 255.0).round() as u8);
    paint
}

impl DrawingBackend for Raster {
    type ErrorType = RasterError;

    fn get_size(&self) -> (u32, u32) {
        (self.pixels.width() * self.fine, self.pixels.height() * self.fine)
    }

    fn ensure_prepared(&mut self) -> Done {
        Ok(())
    }

    fn present(&mut self) -> Done {
        Ok(())
    }

    fn draw_pixel(&mut self, (x, y): BackendCoord, colour: BackendColor) -> Done {
        let side = 1.0 / self.fine as f32;
        let rect = Rect::from_xywh(self.pixel(x), self.pixel(y), side, side);
        self.fill(rect.map(PathBuilder::from_rect), colour)
    }

    fn draw_line<S: BackendStyle>(&mut self, from: BackendCoord, to: BackendCoord, style: &S) -> Done {
        self.stroke(&[from, to], style)
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Done {
        self.stroke(&path.into_iter().collect::<Vec<_>>(), style)
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        a: BackendCoord,
        b: BackendCoord,
        style: &S,
        fill: bool,
    ) -> Done {
        if !fill {
            return self.stroke(&[a, (b.0, a.1), b, (a.0, b.1), a], style);
        }
        let edge = |v: i32| self.pixel(v).round();
        let rect = Rect::from_ltrb(edge(a.0), edge(a.1), edge(b.0), edge(b.1));
        self.fill(rect.map(PathBuilder::from_rect), style.color())
    }

    fn draw_circle<S: BackendStyle>(&mut self, at: BackendCoord, radius: u32, style: &S, fill: bool) -> Done {
        let circle =
            PathBuilder::from_circle(self.pixel(at.0), self.pixel(at.1), radius as f32 / self.fine as f32);
        if fill {
            return self.fill(circle, style.color());
        }
        let width = style.stroke_width() as f32 / self.fine as f32;
        if let Some(path) = circle {
            let stroke = Stroke { width, ..Stroke::default() };
            self.pixels.stroke_path(&path, &paint(style.color()), &stroke, Transform::identity(), None);
        }
        Ok(())
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        corners: I,
        style: &S,
    ) -> Done {
        let mut path = self.polyline(&corners.into_iter().collect::<Vec<_>>());
        path.close();
        self.fill(path.finish(), style.color())
    }

    fn draw_text<S: BackendTextStyle>(&mut self, text: &str, style: &S, (x, y): BackendCoord) -> Done {
        let face = match style.style() {
            FontStyle::Italic | FontStyle::Oblique => &self.italic,
            _ => &self.upright,
        };
        let em = style.size() as f32 / SIZE_IN_EM / self.fine as f32;
        let scale = em / f32::from(face.units_per_em());
        let mut pen = Outline { path: PathBuilder::new(), x: 0.0, scale };
        for letter in text.chars() {
            let glyph = face.glyph_index(letter).unwrap_or_default();
            face.outline_glyph(glyph, &mut pen);
            pen.x += scale * f32::from(face.glyph_hor_advance(glyph).unwrap_or(0));
        }
        let left = match style.anchor().h_pos {
            HPos::Left => 0.0,
            HPos::Center => -pen.x / 2.0,
            HPos::Right => -pen.x,
        };
        // Base lines as plotters' SVG backend has them; an x-height is about half an em.
        let base = match style.anchor().v_pos {
            VPos::Top => 0.76 * em,
            VPos::Center => 0.27 * em,
            VPos::Bottom => -0.27 * em,
        };
        let turn = match style.transform() {
            FontTransform::None => 0.0,
            FontTransform::Rotate90 => 90.0,
            FontTransform::Rotate180 => 180.0,
            FontTransform::Rotate270 => 270.0,
        };
        if let Some(path) = pen.path.finish() {
            let way = Transform::from_translate(left, base)
                .post_concat(Transform::from_rotate(turn))
                .post_translate(self.pixel(x), self.pixel(y));
            self.pixels.fill_path(&path, &paint(style.color()), FillRule::Winding, way, None);
        }
        Ok(())
    }
}

/// Turns letters, one after the other, into one path. Fonts have y pointing up, pictures down.
struct Outline {
    path: PathBuilder,
    x: f32,
    scale: f32,
}

impl Outline {
    fn at(&self, x: f32, y: f32) -> (f32, f32) {
        (self.x + self.scale * x, -self.scale * y)
    }
}

impl OutlineBuilder for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.at(x1, y1), self.at(x, y));
        self.path.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.path.close();
    }
}
