//! The sheet that a chart is drawn on: whether it is large enough, its heading, and where the plot lies.

use super::error::ChartError;
use super::look::Look;
use super::pen::{Pen, Place};
use crate::trace::frame::Frame;
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
/// Room for the heading, and for a second line of it, CSS pixels.
const HEADING: f64 = 34.0;
const SECOND: f64 = 18.0;
/// Sizes of its letters.
const TITLE: f64 = 23.0;
const NOTE: f64 = 16.0;

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
        let (left, right) = (frame.left, frame.left + frame.width);
        let wide = pen.about_width(heading.title, TITLE) + pen.about_width(heading.note, NOTE) + pen.px(20.0);
        // What does not fit into one line takes two.
        let room = pen.px(if wide > frame.width { HEADING + SECOND } else { HEADING }).round();
        let line = frame.top + pen.px(HEADING - 12.0);
        frame.top += room;
        frame.height -= room;
        pen.note(heading.title, (left, line), TITLE, look.theme.ink, Place::AboveRight)?;
        pen.note(heading.note, (right, frame.top - pen.px(12.0)), NOTE, look.theme.axis, Place::AboveLeft)?;
    }
    Ok((pen, frame))
}
