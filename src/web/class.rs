//! For the page: a class, what came in, and what goes out of it again.

use super::fail;
use crate::exchange::class::answers::{self, Key};
use crate::exchange::class::roster::Entry;
use crate::exchange::class::{Care, Class, Line, Source, Terms, gradebook, items, roster, saved};
use crate::exchange::handin::together::beside;
use crate::exchange::handin::{Graded, table};
use crate::plain::{self, json};
use crate::scenario::digest::hex;
use wasm_bindgen::prelude::*;

/// A class.
#[wasm_bindgen]
#[derive(Default)]
pub struct Course {
    class: Class,
    waiting: Vec<Source>,
}

fn told((code, args): (&'static str, serde_json::Value)) -> JsValue {
    fail(code, args)
}

#[wasm_bindgen]
impl Course {
    /// An empty one.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Self {
        Self::default()
    }

    /// A class out of a file; what came in waits to be graded, see [`Course::waiting`].
    pub fn open(text: &str) -> Result<Course, JsValue> {
        let (class, waiting) = saved::read(text).map_err(|e| told(e.told()))?;
        Ok(Self { class, waiting })
    }

    /// What waits to be graded, as JSON: sources. It is told once.
    pub fn waiting(&mut self) -> String {
        json!(std::mem::take(&mut self.waiting)).to_string()
    }

    /// The class as a file.
    pub fn save(&self) -> String {
        saved::write(&self.class)
    }

    /// Takes a scenario as set. All that came in waits to be graded by it.
    pub fn give(&mut self, from: &str, toml: &str) -> Result<(), JsValue> {
        self.class.give(from, toml).map_err(|e| told(e.told()))?;
        self.waiting.extend(self.class.again());
        Ok(())
    }

    /// Benches set already under the name of a scenario or of a part of a course, that are others, as JSON: their marks.
    pub fn rivals(&self, toml: &str) -> Result<String, JsValue> {
        let rivals = self.class.set.rivals(toml).map_err(|e| told(e.told()))?;
        let marks: Vec<String> = rivals.iter().map(|one| hex(&one.bench)).collect();
        Ok(json!(marks).to_string())
    }

    /// Sets the bench with this mark no longer; see [`Class::take_back`]. All that came in waits to be graded without it.
    #[wasm_bindgen(js_name = takeBack)]
    pub fn take_back(&mut self, bench: &str) {
        self.class.take_back(bench);
        self.waiting.extend(self.class.again());
    }

    /// What was set, as JSON, see [`Class::set_told`].
    #[wasm_bindgen(js_name = setTold)]
    pub fn set_told(&self) -> String {
        self.class.set_told().to_string()
    }

    /// What was set, as JSON: `[[from, text]…]`.
    pub fn given(&self) -> String {
        let all: Vec<_> = self.class.set.all().iter().map(|one| (&one.from, &one.text)).collect();
        json!(all).to_string()
    }

    /// Takes down what came of something: its source and what was graded, both as JSON.
    pub fn take(&mut self, source: &str, graded: &str) -> Result<(), JsValue> {
        let wrong = |e: plain::Unread| fail("core_stopped", json!({"told": e.to_string()}));
        let graded: Graded = plain::from_json(graded).map_err(wrong)?;
        self.class.take(plain::from_json(source).map_err(wrong)?, graded);
        Ok(())
    }

    /// Takes down what could not be used: its source as JSON, and why as a code with arguments.
    pub fn refuse(&mut self, source: &str, code: &str, args: &str) -> Result<(), JsValue> {
        let source =
            plain::from_json(source).map_err(|e| fail("core_stopped", json!({"told": e.to_string()})))?;
        self.class.refuse(source, code, plain::value(args).unwrap_or_default());
        Ok(())
    }

    /// Where the k-th result came from, as JSON; nothing where there is none.
    pub fn source(&self, k: usize) -> Option<String> {
        self.class.sources.get(k).map(|source| json!(source).to_string())
    }

    /// Takes the list of students, as JSON: `taken`, how many (none where it is no list), and `wrong`, the lines left out or what is
    /// wrong with the whole of it: `[{code, args}…]`.
    pub fn roster(&mut self, text: &str) -> String {
        let (taken, wrong) = match roster::read_lines(text) {
            Ok((list, wrong)) => {
                self.class.roster = list;
                (self.class.roster.len(), wrong)
            }
            Err(wrong) => (0, wrong),
        };
        let wrong: Vec<_> =
            wrong.iter().map(|e| e.told()).map(|(code, args)| json!({"code": code, "args": args})).collect();
        json!({"taken": taken, "wrong": wrong}).to_string()
    }

    /// Forgets the list.
    #[wasm_bindgen(js_name = forgetRoster)]
    pub fn forget_roster(&mut self) {
        self.class.roster.clear();
    }

    /// By what the class is judged, as JSON; what is given is taken, and what then counts comes back.
    pub fn terms(&mut self, terms: &str) -> String {
        if let Ok(terms) = plain::from_json::<Terms>(terms) {
            self.class.terms = terms;
        }
        json!(self.class.terms).to_string()
    }

    /// Decides something for a student, as JSON.
    pub fn care(&mut self, code: &str, care: &str) {
        if let Ok(care) = plain::from_json::<Care>(care) {
            self.class.cares.put(code, care);
        }
    }

    /// From now on changes are told against how everybody stands now.
    pub fn settle(&mut self) {
        self.class.stood = self.class.stand();
    }

    /// All that there is to be seen, as JSON.
    pub fn told(&self) -> String {
        self.class.told().to_string()
    }

    /// How each item did, as JSON: what was wrong in which scenario.
    pub fn items(&self) -> String {
        // The instructor's own table, of people whom they know: nothing is too few.
        crate::plain::given(&items::of_class(&self.class.graded, 1)).to_string()
    }

    /// Every result as a table of text.
    pub fn csv(&self) -> String {
        let (sources, graded) = (&self.class.sources, &self.class.graded);
        let mut text = format!("{}\n", table::HEAD);
        for ((source, result), found) in sources.iter().zip(graded).zip(beside(graded)) {
            if found.again.is_none() {
                text += &table::line(&source.file, result, &table::beside(graded, &found));
                text.push('\n');
            }
        }
        text
    }

    /// Rows for a gradebook: of the students with these codes (JSON), in this order, with these words for each.
    pub fn gradebook(&self, codes: &str, feedback: &str, order: &str) -> Result<String, JsValue> {
        let wrong = |e: plain::Unread| fail("core_stopped", json!({"told": e.to_string()}));
        let codes: Vec<String> = plain::from_json(codes).map_err(wrong)?;
        let feedback: Vec<String> = plain::from_json(feedback).map_err(wrong)?;
        let order: gradebook::Order = plain::from_json(order).map_err(wrong)?;
        let all = self.class.lines();
        let lines: Vec<Line> =
            codes.iter().filter_map(|code| all.iter().find(|line| line.code == *code)).cloned().collect();
        gradebook::write(&lines, &feedback, &order).map_err(|e| told(e.told()))
    }

    /// Everybody who has a code, as JSON: `[[student, more tries than the others]…]`, see [`Class::everybody`].
    pub fn everybody(&self) -> String {
        json!(self.class.everybody()).to_string()
    }
}

/// The answer key of what was set, made student by student, so that several workers can share it.
#[wasm_bindgen]
pub struct AnswerKey {
    key: Key,
}

#[wasm_bindgen]
impl AnswerKey {
    /// Opens it with the instructor's password; "" where the file itself has it.
    #[wasm_bindgen(constructor)]
    pub fn new(text: &str, password: &str) -> Result<AnswerKey, JsValue> {
        let password = Some(password).filter(|password| !password.is_empty());
        Ok(Self { key: Key::open(text, password).map_err(|e| told(e.told()))? })
    }

    /// The first line of its table.
    pub fn head() -> String {
        answers::HEAD.into()
    }

    /// The lines of a student of [`Course::everybody`].
    pub fn rows(&self, student: &str) -> Result<String, JsValue> {
        let wrong = |e: plain::Unread| fail("core_stopped", json!({"told": e.to_string()}));
        let (entry, more): (Entry, u32) = plain::from_json(student).map_err(wrong)?;
        Ok(answers::rows(&self.key.of(&entry, more).map_err(|e| told(e.told()))?))
    }
}
