//! The sheet that a chart is drawn on: whether it is large enough, its heading, and where the plot lies.

use super::error::ChartError;
use super::look::Look;
use super::pen::{Pen, Place};
use crate::strip::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;

/// What stands above the plot. Empty texts take no room.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Heading<'a> {
    /// At the left.
    pub title: &'a str,
    /// At the right, smaller.
    pub note: &'a str,
}

/// Least size of a sheet, CSS pixels: below it labels would lie on each other.
const LEAST: (u32, u32) = (280, 150);
/// Room for the heading, CSS pixels.
const HEADING: f64 = 34.0;

/// Prepares the sheet and gives the pen and the plot's frame.
pub(super) fn lay<'a, B: DrawingBackend>(
    area: &'a DrawingArea<B, Shift>,
    look: &'a Look,
    heading: &Heading,
) -> Result<(Pen<'a, B>, Frame), ChartError> {
    let (width, height) = area.dim_in_pixel();
    let css = |device: u32| (f64::from(device) / look.dpr) as u32;
    if !(look.dpr > 0.0 && css(width) >= LEAST.0 && css(height) >= LEAST.1) {
        let (width, height) = (css(width), css(height));
        return Err(ChartError::TooSmall { needed_width: LEAST.0, needed_height: LEAST.1, width, height });
    }
    let pen = Pen { area, look };
    if let Some(sheet) = look.sheet {
        pen.block((0.0, 0.0), (f64::from(width), f64::from(height)), sheet.to_rgba())?;
    }
    let mut frame = Frame::new(f64::from(width), f64::from(height), look.dpr);
    if !(heading.title.is_empty() && heading.note.is_empty()) {
        let room = (HEADING * look.dpr).round();
        frame.top += room;
        frame.height -= room;
        let line = frame.top - 12.0 * look.dpr;
        let right = frame.left + frame.width;
        pen.note(heading.title, (frame.left, line), 23.0, look.theme.ink, Place::AboveRight)?;
        pen.note(heading.note, (right, line), 16.0, look.theme.axis, Place::AboveLeft)?;
    }
    Ok((pen, frame))
}
