//! The words of questions: those of the page, from the same files, in one of its languages.

use std::collections::BTreeMap;

use clap::ValueEnum;
use dicrotic::exchange::bank::{Question, Words};
use serde_json::Value;

use crate::failure::{Failure, While};
use crate::texts;

/// A language of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Language {
    /// English
    En,
    /// Spanish
    Es,
}

impl Language {
    /// As `xml:lang` names it.
    pub fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
        }
    }

    /// What stands between whole and decimals.
    pub fn decimal(self) -> char {
        match self {
            Self::En => '.',
            Self::Es => ',',
        }
    }

    /// The files with the questions' words and with those of the misreadings.
    fn files(self) -> [&'static str; 2] {
        match self {
            Self::En => [
                include_str!("../../../../www/texts/en/later/bank.ftl"),
                include_str!("../../../../www/texts/en/debrief.ftl"),
            ],
            Self::Es => [
                include_str!("../../../../www/texts/es/later/bank.ftl"),
                include_str!("../../../../www/texts/es/debrief.ftl"),
            ],
        }
    }
}

/// The words of a language.
pub struct Texts {
    messages: BTreeMap<String, Value>,
    decimal: char,
}

impl Texts {
    /// Those of one language.
    pub fn of(language: Language) -> Result<Self, Failure> {
        let mut messages = BTreeMap::new();
        for file in language.files() {
            messages.extend(texts::messages(file).while_doing(|| "reading the page's words".into())?);
        }
        Ok(Self { messages, decimal: language.decimal() })
    }

    /// The message of a key with its places filled.
    fn say(&self, key: &str, told: &[(&str, &Value)]) -> Result<String, Failure> {
        let missing = |what: &str| Failure::new(format!("the page's words: {key} {what}"));
        match self.messages.get(key).ok_or_else(|| missing("is missing"))? {
            Value::String(text) => Ok(text.clone()),
            Value::Array(parts) => parts
                .iter()
                .map(|part| match (part, part.get("v").and_then(Value::as_str)) {
                    (Value::String(text), _) => Ok(text.clone()),
                    (_, Some(name)) => {
                        let value = told.iter().find(|(one, _)| *one == name);
                        value.map(|(_, v)| self.shown(v)).ok_or_else(|| missing("has an unknown place"))
                    }
                    _ => Err(missing("has a choice of forms, which only the page can make")),
                })
                .collect(),
            _ => Err(missing("is no text")),
        }
    }

    /// A value as the page shows it.
    fn shown(&self, value: &Value) -> String {
        match value {
            Value::String(text) => text.clone(),
            Value::Number(number) => {
                let hundredths = (number.as_f64().unwrap_or(0.0) * 100.0).round() / 100.0;
                hundredths.to_string().replace('.', &self.decimal.to_string())
            }
            other => other.to_string(),
        }
    }

    /// The words of a question.
    pub fn words(&self, question: &Question) -> Result<Words, Failure> {
        let told = question.told();
        let all = |part: &'static str| -> Vec<(&str, &Value)> {
            let fields = told[part].as_object().into_iter().flatten();
            fields.map(|(name, value)| (name.as_str(), value)).collect()
        };
        let (mut answers, mut feedback) = (Vec::new(), Vec::new());
        for answer in told["answers"].as_array().into_iter().flatten() {
            answers.push(self.say("bank-answer", &[("rate", &answer["rate"])])?);
            feedback.push(match answer["misreading"].as_str() {
                None => self.say("bank-right", &all("right"))?,
                Some(name) => {
                    let part = |which: &str| self.say(&format!("misreading-{name}.{which}"), &[]);
                    // A printed trace has no beat marks: where the page speaks of them the bank has words of its own.
                    let own = format!("bank-ask-{name}");
                    let ask =
                        if self.messages.contains_key(&own) { self.say(&own, &[])? } else { part("ask")? };
                    let (see, ask) = (Value::String(part("see")?), Value::String(ask));
                    self.say("bank-wrong", &[("see", &see), ("ask", &ask)])?
                }
            });
        }
        Ok(Words {
            title: self.say("bank-item", &[("title", &told["title"]), ("n", &told["number"])])?,
            question: self.say("bank-question", &[])?,
            alt: self.say("bank-alt", &all("seen"))?,
            answers,
            feedback,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_question_has_its_words_in_each_language() {
        let toml = include_str!("../../../../scenarios/04-rest-pulse.toml");
        let question = Question::new(toml, 1, 3).unwrap();
        let right = &question.still.right;
        for (language, unit, item) in [
            (Language::En, "beats/min", "A pulse at rest: trace 3"),
            (Language::Es, "latidos/min", "A pulse at rest: trazo 3"),
        ] {
            let words = Texts::of(language).unwrap().words(&question).unwrap();
            assert_eq!(words.title, item);
            let texts = [&words.question, &words.alt].into_iter().chain(&words.feedback);
            for text in texts {
                assert!(!text.contains(['{', '}']) && text.len() > 20, "{text}");
            }
            for (text, answer) in words.answers.iter().zip(&question.answers) {
                assert_eq!(*text, format!("{} {unit}", answer.reading.rate));
            }
            let told = &words.feedback[question.right()];
            assert!(
                told.contains(&format!("{} × 60 / {} = {}", right.count, right.seconds, right.rate)),
                "{told}"
            );
        }
    }

    #[test]
    fn feedback_on_a_printed_trace_speaks_of_no_beat_marks() {
        let toml = include_str!("../../../../scenarios/04-rest-pulse.toml");
        let questions: Vec<Question> = (1..=12).map(|n| Question::new(toml, 1, n).unwrap()).collect();
        for (language, mark) in [(Language::En, "mark"), (Language::Es, "marca")] {
            let texts = Texts::of(language).unwrap();
            for words in questions.iter().map(|question| texts.words(question).unwrap()) {
                let wrong: Vec<_> = words.feedback.iter().filter(|text| text.contains(mark)).collect();
                assert!(wrong.is_empty(), "{wrong:?}");
            }
        }
    }

    #[test]
    fn numbers_have_the_decimal_sign_of_their_language() {
        for (language, sign) in [(Language::En, "2.5 s"), (Language::Es, "2,5 s")] {
            let texts = Texts::of(language).unwrap();
            let (half, two) = (Value::from(2.5), Value::from(2.0));
            let told = [("seconds", &two), ("division", &two), ("a", &half), ("b", &two)];
            assert!(texts.say("bank-alt", &told).unwrap().contains(sign));
        }
        let gap = Texts::of(Language::En).unwrap().say("bank-alt", &[]).unwrap_err().to_string();
        assert!(gap.contains("bank-alt"), "{gap}");
    }
}
