//! A small writer of SVG: everything that comes from outside is escaped here and nowhere else.

use std::fmt::Write;

use super::frame::Frame;
use super::look::INK;

/// Escapes `text` for XML 1.0 (W3C 2008), content or attribute; letters XML forbids become U+FFFD.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\u{0}'..='\u{1F}' | '\u{FFFE}' | '\u{FFFF}' => out.push('\u{FFFD}'),
            _ => out.push(letter),
        }
    }
    out
}

/// A coordinate with at most two decimals; what is not a number stays at the origin.
pub(super) fn at(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Where a text hangs from its point.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// How a text is set.
#[derive(Clone, Copy)]
pub(super) struct Style {
    pub(super) size: f64,
    pub(super) anchor: Anchor,
    pub(super) fill: &'static str,
    pub(super) bold: bool,
    pub(super) quiet: bool,
}

impl Style {
    pub(super) const fn new(size: f64) -> Self {
        Self { size, anchor: Anchor::Start, fill: INK, bold: false, quiet: false }
    }

    pub(super) const fn anchor(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    pub(super) const fn fill(self, fill: &'static str) -> Self {
        Self { fill, ..self }
    }

    pub(super) const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// The quiet italic of the serif face.
    pub(super) const fn quiet(self) -> Self {
        Self { quiet: true, ..self }
    }
}

/// How a line or an edge is drawn.
#[derive(Clone, Copy)]
pub(super) struct Stroke<'a> {
    pub(super) hue: &'a str,
    pub(super) width: f64,
    pub(super) dash: &'a str,
    pub(super) opacity: f64,
}

impl<'a> Stroke<'a> {
    pub(super) const fn new(hue: &'a str, width: f64) -> Self {
        Self { hue, width, dash: "", opacity: 1.0 }
    }

    pub(super) const fn dash(self, dash: &'a str) -> Self {
        Self { dash, ..self }
    }

    pub(super) const fn opacity(self, opacity: f64) -> Self {
        Self { opacity, ..self }
    }

    fn write(&self, out: &mut String) {
        let _ = write!(out, r#" stroke="{}" stroke-width="{}""#, self.hue, at(self.width));
        if !self.dash.is_empty() {
            let _ = write!(out, r#" stroke-dasharray="{}""#, self.dash);
        }
        if self.opacity < 1.0 {
            let _ = write!(out, r#" stroke-opacity="{}""#, at(self.opacity));
        }
    }
}

/// A picture being drawn.
pub(super) struct Drawing {
    out: String,
}

impl Drawing {
    pub(super) const fn new() -> Self {
        Self { out: String::new() }
    }

    pub(super) fn line(&mut self, from: (f64, f64), to: (f64, f64), stroke: Stroke<'_>) {
        let ((x1, y1), (x2, y2)) = (from, to);
        let _ = write!(
            self.out,
            r#"<line x1="{}" x2="{}" y1="{}" y2="{}""#,
            at(x1),
            at(x2),
            at(y1),
            at(y2)
        );
        stroke.write(&mut self.out);
        self.out.push_str("/>");
    }

    /// A line through `points`.
    pub(super) fn polyline(&mut self, points: &[(f64, f64)], stroke: Stroke<'_>) {
        if points.is_empty() {
            return;
        }
        let through: Vec<_> =
            points.iter().map(|(x, y)| format!("{} {}", at(*x), at(*y))).collect();
        let _ = write!(
            self.out,
            r#"<path d="M{}" fill="none" stroke-linejoin="round""#,
            through.join("L")
        );
        stroke.write(&mut self.out);
        self.out.push_str("/>");
    }

    /// A filled shape given as path data of our own making.
    pub(super) fn shape(
        &mut self,
        path: &str,
        fill: &str,
        opacity: f64,
        edge: Option<Stroke<'_>>,
    ) {
        let _ = write!(self.out, r#"<path d="{path}" fill="{fill}""#);
        if opacity < 1.0 {
            let _ = write!(self.out, r#" fill-opacity="{}""#, at(opacity));
        }
        if let Some(edge) = edge {
            edge.write(&mut self.out);
        }
        self.out.push_str("/>");
    }

    pub(super) fn circle(
        &mut self,
        (x, y): (f64, f64),
        radius: f64,
        fill: &str,
        edge: Option<Stroke<'_>>,
    ) {
        let _ = write!(
            self.out,
            r#"<circle cx="{}" cy="{}" r="{}" fill="{fill}""#,
            at(x),
            at(y),
            at(radius)
        );
        if let Some(edge) = edge {
            edge.write(&mut self.out);
        }
        self.out.push_str("/>");
    }

    pub(super) fn text(&mut self, (x, y): (f64, f64), text: &str, style: Style) {
        let _ = write!(
            self.out,
            r#"<text x="{}" y="{}" font-size="{}" fill="{}""#,
            at(x),
            at(y),
            at(style.size),
            style.fill
        );
        match style.anchor {
            Anchor::Start => {}
            Anchor::Middle => self.out.push_str(r#" text-anchor="middle""#),
            Anchor::End => self.out.push_str(r#" text-anchor="end""#),
        }
        if style.bold {
            self.out.push_str(r#" font-weight="600""#);
        }
        if style.quiet {
            self.out.push_str(r#" font-style="italic" font-family="Barm Serif, serif""#);
        }
        let _ = write!(self.out, ">{}</text>", escaped(text));
    }

    /// A picture on an 18 by 18 grid that only repeats a word beside it.
    pub(super) fn loose(self, size: f64) -> String {
        format!(
            concat!(
                r#"<svg xmlns="http://www.w3.org/2000/svg" class="mark" width="{s}" height="{s}" "#,
                r#"viewBox="0 0 18 18" aria-hidden="true">{body}</svg>"#
            ),
            s = at(size),
            body = self.out,
        )
    }

    /// A picture in the size of a word, with its name for those who cannot see it.
    pub(super) fn small(self, (width, height): (f64, f64), title: &str) -> String {
        format!(
            concat!(
                r#"<svg xmlns="http://www.w3.org/2000/svg" class="spark" role="img" "#,
                r#"width="{w}" height="{h}" viewBox="0 0 {w} {h}"><title>{title}</title>{body}</svg>"#
            ),
            w = at(width),
            h = at(height),
            title = escaped(title),
            body = self.out,
        )
    }

    /// The finished picture with its name and its description for those who cannot see it.
    pub(super) fn finish(self, frame: &Frame, height: f64, title: &str, desc: &str) -> String {
        format!(
            concat!(
                r#"<svg xmlns="http://www.w3.org/2000/svg" class="chart" role="img" "#,
                r#"width="{w}" height="{h}" viewBox="0 0 {w} {h}" "#,
                r#"font-family="Barm Sans, sans-serif"><title>{title}</title><desc>{desc}</desc>{body}</svg>"#
            ),
            w = at(frame.width),
            h = at(height),
            title = escaped(title),
            desc = escaped(desc),
            body = self.out,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// XML 1.0, productions [2] Char and [14] CharData.
        #[test]
        fn any_text_is_fit_for_xml(text in any::<String>()) {
            let escaped = escaped(&text);
            prop_assert!(!escaped.contains(['<', '>', '"', '\'']));
            let allowed = |c: char| matches!(c,
                '\u{20}'..='\u{D7FF}' | '\u{E000}'..='\u{FFFD}' | '\u{10000}'..='\u{10FFFF}');
            prop_assert!(escaped.chars().all(allowed));
            let plain = escaped
                .replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"")
                .replace("&#39;", "'").replace("&amp;", "&");
            let tame = |c: char| if matches!(c, '\t' | '\n' | '\r') { ' ' }
                else if c < ' ' || c == '\u{FFFE}' || c == '\u{FFFF}' { '\u{FFFD}' } else { c };
            prop_assert_eq!(plain, text.chars().map(tame).collect::<String>());
        }

        #[test]
        fn a_coordinate_is_always_a_number(value in any::<f64>()) {
            let written = at(value);
            prop_assert!(written.parse::<f64>().is_ok_and(f64::is_finite), "{}", written);
        }
    }
}
