//! The list of a class: read in the forms in which it comes, refused with the line and what is wrong there.

use dicrotic::exchange::class::roster::{Entry, MOST_STUDENTS, RosterError, read, read_lines};

fn entry(code: &str, name: &str, email: &str, group: &str) -> Entry {
    Entry { code: code.into(), name: name.into(), email: email.into(), group: group.into() }
}

#[test]
fn the_usual_forms_come_to_the_same_list() {
    let list = vec![
        entry("Group A-01", "Ada Moss", "ada@example.org", "A"),
        entry("Group A-02", "Ben, the \"younger\"", "ben@example.org", "A"),
    ];
    for text in [
        "code,name,email,group\nGroup A-01,Ada Moss,ada@example.org,A\nGroup A-02,\"Ben, the \"\"younger\"\"\",ben@example.org,A\n",
        "\u{feff}Student ID;Full name;E-mail address;Section;Grade\r\nGroup A-01;Ada Moss;ada@example.org;A;12\r\nGroup A-02;\"Ben, the \"\"younger\"\"\";ben@example.org;A;\r\n",
        "Grupo\tCorreo electrónico\tNombre\tCódigo\nA\tada@example.org\tAda Moss\tGroup A-01\n\nA\tben@example.org\tBen, the \"younger\"\tGroup A-02",
        // No titles: the addresses are known by themselves.
        "Group A-01;Ada Moss;ada@example.org;A\nGroup A-02;\"Ben, the \"\"younger\"\"\";ben@example.org;A\n",
        // Old line ends, blanks around cells, a line end within a name, an empty cell too many.
        " code , name , email , group \r\"Group A-01\" , \"Ada\rMoss\" , ada@example.org , A , \rGroup A-02,\"Ben, the \"\"younger\"\"\",ben@example.org,A\r",
    ] {
        assert_eq!(read(text), Ok(list.clone()), "{text}");
    }
}

#[test]
fn first_and_family_names_are_one_name_and_one_column_is_enough() {
    for head in ["First name,Last name,ID", "Nombre,Apellidos,Usuario", "name,surname,login"] {
        assert_eq!(
            read(&format!("{head}\nAda,Moss,a1\n")),
            Ok(vec![entry("a1", "Ada Moss", "", "")]),
            "{head}"
        );
    }
    assert_eq!(read("A-01\nA-02\n"), Ok(vec![entry("A-01", "", "", ""), entry("A-02", "", "", "")]));
    assert_eq!(read("x@example.org\n").unwrap()[0].code, "x@example.org");
}

fn errors(text: &str) -> Vec<String> {
    read(text).unwrap_err().iter().map(ToString::to_string).collect()
}

#[test]
fn what_is_wrong_is_told_with_its_line_and_all_of_it_at_once() {
    assert_eq!(
        errors("code,name\na1,Ada\n,Ben\nA 1,Cy\nb2,Dee,x\nc3,\"E\n"),
        ["line 6: a quote opens here and is not closed"]
    );
    assert_eq!(
        errors("code,name\na1,Ada\n,Ben\n\nA 1,Cy\nb2,\"Dee\nDee\",x\n"),
        [
            "line 3: the student ID is missing",
            "line 5: the student ID \"A 1\" is already on line 2",
            "line 6: 3 cells for 2 columns"
        ]
    );
    assert_eq!(
        errors("name,email\nAda,a@example.org\n")[0],
        "line 1: no column has the student IDs; its titles are \"name\", \"email\"; call it \"student ID\""
    );
    assert_eq!(errors("id,code\n1,2\n")[0], "line 1: two columns with the codes: \"id\" and \"code\"");
    assert_eq!(errors("code,name\n"), ["there is no student in the list"]);
    assert_eq!(errors(" \n\n"), ["there is no student in the list"]);
    assert_eq!(errors("a1\nb\0c"), ["line 2: this is no plain text: save the list as CSV in UTF-8"]);
    assert_eq!(errors(&format!("a1,{}", "x".repeat(201))), ["line 1: a cell of 201 characters; at most 200"]);
    let long: String = (0..=MOST_STUDENTS).map(|k| format!("s{k}\n")).collect();
    assert_eq!(
        read(&long).unwrap_err(),
        [RosterError::TooMany { line: MOST_STUDENTS + 1, most: MOST_STUDENTS }]
    );
    assert!(matches!(read(&"x".repeat(2 << 20)).unwrap_err()[..], [RosterError::TooLong { .. }]));
    // Not more than can be read at once.
    assert_eq!(read(&"a\n".repeat(100)).unwrap_err().len(), 20);
}

#[test]
fn no_text_brings_the_reader_down() {
    let pieces = ["\"", ",", ";", "\t", "\n", "\r\n", "code", "a", "é", "\u{feff}", " ", "=1", "@"];
    let mut draw = 7_u64;
    for _ in 0..20_000 {
        let text: String = (0..12)
            .map(|_| {
                draw = dicrotic::rng::mix(draw);
                pieces[(draw % pieces.len() as u64) as usize]
            })
            .collect();
        if let Ok(entries) = read(&text) {
            assert!(entries.iter().all(|e| !e.code.trim().is_empty()), "{text:?}");
        }
    }
}

#[test]
fn a_list_with_lines_that_are_wrong_gives_those_that_are_right() {
    let (list, wrong) = read_lines("code,name\na1,Ada\n,Ben\nA 1,Cy\nb2,Dee\n").unwrap();
    assert_eq!(list, [entry("a1", "Ada", "", ""), entry("b2", "Dee", "", "")]);
    let wrong: Vec<String> = wrong.iter().map(ToString::to_string).collect();
    assert_eq!(
        wrong,
        ["line 3: the student ID is missing", "line 4: the student ID \"A 1\" is already on line 2"]
    );
    // Where the titles say nothing, or nobody is right, nothing is taken.
    assert!(read_lines("name,email\nAda,a@example.org\n").is_err());
    assert!(read_lines("code,name\n,Ada\n").is_err());
    let (strict, lines) = (read("code,name\na1,Ada\n").unwrap(), read_lines("code,name\na1,Ada\n").unwrap());
    assert_eq!((strict, Vec::new()), lines);
}

#[test]
fn what_is_no_list_is_told_as_that_and_not_line_by_line() {
    for text in [
        "id = \"before-the-lab\"\nlevel = 2\n",
        "# of ours\ntitle = \"x\"\n\n[[fault]]\nname = \"power_strip_off\"\n",
        "{\"format\": \"dicrotic-result\"}",
        "<html><body>",
    ] {
        assert_eq!(read(text), Err(vec![RosterError::NoList]), "{text}");
    }
    assert!(read("id,name\n[7],Ada\n").is_ok(), "brackets in a cell are no table");
}
