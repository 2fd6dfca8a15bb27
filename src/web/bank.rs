//! For the page: a question bank, made question by question, so that the page can tell how far it is and can stop.

use super::package::Package;
use super::{fail, scenario_fail};
use crate::exchange::bank::{Bank, BankError, Form, MOST_QUESTIONS, Question, Words};
use crate::plain::{self, json};
use crate::session::save;
use crate::session::still::StillError;
use wasm_bindgen::prelude::*;

fn bank_fail(error: &BankError) -> JsValue {
    match error {
        BankError::Still(StillError::Scenario(error)) => scenario_fail(error),
        BankError::Still(StillError::Unclear { recordings }) => {
            fail("bank_unclear", json!({"recordings": recordings}))
        }
        BankError::Alike { stills } => fail("bank_alike", json!({"stills": stills})),
        BankError::Words { number, field, found, expected } => fail(
            "bank_words",
            json!({"number": number, "field": field, "found": found, "expected": expected}),
        ),
        BankError::Full => fail("bank_full", json!({"most": MOST_QUESTIONS})),
    }
}

/// A question bank in the making.
#[wasm_bindgen]
pub struct QuestionBank {
    bank: Bank,
    question: Option<Question>,
    decimal: char,
}

#[wasm_bindgen]
impl QuestionBank {
    /// An empty one of a form (`qti` or `csv`), in a language, with the sign that stands before decimals.
    #[wasm_bindgen(constructor)]
    pub fn new(form: &str, language: &str, decimal: char) -> Result<QuestionBank, JsValue> {
        let wrong = || fail("bad_value", json!({"field": "form", "expected": "qti, csv"}));
        let form = Form::of_name(form).ok_or_else(wrong)?;
        Ok(Self { bank: Bank::new(form, language, decimal), question: None, decimal })
    }

    /// Most questions that a bank has.
    pub fn most() -> u32 {
        MOST_QUESTIONS
    }

    /// Makes question `number`, from 1, of the bank with a seed in decimal digits, about a scenario's text, and tells its facts as
    /// JSON.
    pub fn ask(&mut self, toml: &str, seed: &str, number: u32) -> Result<String, JsValue> {
        let seed = save::seed(seed).map_err(|e| fail("seed_invalid", json!({"found": e.to_string()})))?;
        let question = Question::new(toml, seed, number).map_err(|e| bank_fail(&e))?;
        let told = question.told().to_string();
        self.question = Some(question);
        Ok(told)
    }

    /// The picture of the question that was made last, under a heading; nothing before the first.
    pub fn picture(&self, title: &str) -> Option<String> {
        self.question.as_ref().map(|question| question.picture(title, self.decimal))
    }

    /// Takes in the question that was made last, with its words as JSON.
    pub fn add(&mut self, words: &str) -> Result<(), JsValue> {
        let words: Words =
            plain::from_json(words).map_err(|e| fail("core_stopped", json!({"told": e.to_string()})))?;
        match self.question.take() {
            Some(question) => self.bank.add(&question, words).map_err(|e| bank_fail(&e)),
            None => Ok(()),
        }
    }

    /// Its files, to be packed.
    pub fn finish(self) -> Package {
        Package::of(self.bank.files())
    }
}
