//! Charts as files: SVG text and PNG bytes.

use super::error::ChartError;
use super::look::Look;
use super::raster::Raster;
use plotters::coord::Shift;
use plotters::drawing::IntoDrawingArea;
use plotters::prelude::{DrawingArea, DrawingBackend, SVGBackend};
use std::cell::RefCell;
use std::rc::Rc;

/// Steps of coordinates in a pixel of the file: plotters counts in whole steps, and slopes are to be smooth.
const FINE: u32 = 4;
/// How much larger labels are in a file than on the page, where they stand beside other texts of their size.
const LARGER: f64 = 1.3;
/// Largest side of a file, pixels.
pub const LARGEST: u32 = 8000;

/// A chart that can be drawn on any backend: what the charts of this folder have in common.
pub trait Drawn {
    /// Draws it.
    fn draw<B: DrawingBackend>(&self, area: &DrawingArea<B, Shift>, look: &Look) -> Result<(), ChartError>;
}

/// The chart as an SVG document of `width` by `height` pixels.
pub fn svg(chart: &impl Drawn, look: &Look, (width, height): (u32, u32)) -> Result<String, ChartError> {
    let (wide, high) = fine(width, height)?;
    let mut text = String::new();
    {
        let area = SVGBackend::with_string(&mut text, (wide, high)).into_drawing_area();
        chart.draw(&area, &scaled(look))?;
        area.present().map_err(|error| ChartError::Drawing { what: error.to_string() })?;
    }
    // The view box keeps the fine steps; the picture is as large as asked for. Round ends and corners suit a stylus.
    let size = |w: u32, h: u32| format!("width=\"{w}\" height=\"{h}\"");
    let round = " stroke-linejoin=\"round\" stroke-linecap=\"round\"";
    Ok(text.replacen(&size(wide, high), &(size(width, height) + round), 1))
}

/// The chart as a PNG file of `width` by `height` pixels.
pub fn png(chart: &impl Drawn, look: &Look, (width, height): (u32, u32)) -> Result<Vec<u8>, ChartError> {
    fine(width, height)?;
    let failed = |what: String| ChartError::Drawing { what };
    // Drawing areas share their backend; this keeps a share.
    let picture = Raster::new(width, height, FINE).map_err(|error| failed(error.to_string()))?;
    let picture = Rc::new(RefCell::new(picture));
    chart.draw(&DrawingArea::from(&picture), &scaled(look))?;
    picture.borrow().png().map_err(|error| failed(error.to_string()))
}

fn scaled(look: &Look) -> Look {
    look.clone().at(look.dpr * f64::from(FINE) * LARGER)
}

fn fine(width: u32, height: u32) -> Result<(u32, u32), ChartError> {
    if width > LARGEST || height > LARGEST {
        return Err(ChartError::TooLarge { most: LARGEST, width, height });
    }
    Ok((FINE * width, FINE * height))
}
