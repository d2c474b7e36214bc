"""Catalogue entries for files and shelves: what is wrong with a file as a whole."""

from __future__ import annotations

from typing import Final

from .entry import Entry

SOUND: Final = 'edition 1\n\nblock "Trial" {\n  finished 6in\n  seam top -- bottom\n}\n'

FILES: Final = (
    Entry(
        "file-unreadable",
        "A file cannot be read",
        "The system does not let Piecewright read the file: its permissions forbid it, or it went away "
        "meanwhile. Look at its permissions, or copy it to a folder of your own.",
    ),
    Entry(
        "shelf-file-faulty",
        "A file that may hold a used block has a mistake",
        "A `use` asks for a title. A file on a shelf has that title, but has a mistake of its own, so "
        "none of its blocks can be used. Check that file and mend it; then the block is found.",
    ),
    Entry(
        "manifest-damaged",
        "A shelf's manifest cannot be read",
        "A folder of blocks may have a file `shelf.toml` that gives the shelf a title and a note and names "
        "what in the folder is no part of it. It is written in TOML: a name, an equals sign, and a text in "
        "quotes or a list of them. Until it is mended nobody knows what is on the shelf: nothing is "
        "made of a file that looks there, and `find` alone searches it as if the manifest were not there.",
    ),
    Entry(
        "manifest-key-unknown",
        "A shelf's manifest says something that no manifest says",
        "A manifest has `title`, `note` and `leave-out`, and nothing else; the word is probably a slip.",
    ),
    Entry(
        "block-on-shelf-twice",
        "Two blocks of one title and version on one shelf",
        "Blocks are found by title and version. Two files of one shelf hold a block of the same title and "
        "version, so a quilt gets the one whose file comes first by name. Give one another version, or "
        "take it off the shelf.",
    ),
    Entry(
        "file-empty",
        "A file with nothing in it",
        "There is nothing in the file but blanks and remarks. A block file begins with `edition 1`, and "
        "then comes a block.",
        "# only a remark\n",
        SOUND,
    ),
    Entry(
        "file-too-large",
        "A file larger than any block file",
        "A block of 20,000 pieces takes about 2 MB of text; a file of more than 8 MB is something else, "
        "such as a picture. Nothing of it is read.",
    ),
    Entry(
        "source-not-text",
        "A file that is not text",
        "The file holds a zero byte, which no text does. It may be a picture, a program, or a document of"
        " a word processor. Save it as plain text.",
    ),
    Entry(
        "source-encoding",
        "A file in another encoding",
        "Block files are text in UTF-8. This one was saved in another encoding, so that letters such as "
        "accented ones or fraction signs would come out wrong. Save it again as UTF-8.",
    ),
    Entry(
        "letter-missing",
        "Words with letters that the sheets cannot print",
        "Sheets are set in one typeface, so that they come out alike on every machine. It has the letters "
        "of Latin, Greek and Cyrillic writing, and many signs. A letter that it lacks is printed as the "
        "plain one that it is a form of, else as a box; an accent that it lacks is left out.",
        SOUND.replace("Trial", "Sea 海"),
        SOUND,
    ),
    Entry(
        "edition-missing",
        "No edition is named",
        "The first line of a file says which edition of the language it is written in. Later compilers "
        "then still read it as it was meant. Without the line the newest edition is taken.",
        SOUND.partition("\n\n")[2],
        SOUND,
    ),
    Entry(
        "edition-unknown",
        "An edition that does not exist",
        "The file names an edition of the language that this compiler does not know. A newer Piecewright "
        "may, or the number is a slip.",
        SOUND.replace("edition 1", "edition 7"),
        SOUND,
    ),
    Entry(
        "edition-not-first",
        "The edition is named in the wrong place",
        "`edition` stands once, on the first line of the file, before every block.",
        SOUND + "edition 1\n",
        SOUND,
    ),
    Entry(
        "block-missing",
        "A file without a block",
        "The file names its edition, and then nothing follows. Write a block, or check another file.",
        "edition 1\n",
        SOUND,
    ),
    Entry(
        "statement-outside",
        "A statement outside any block",
        "Statements such as `seam` or `finished` stand inside the braces of a block.",
        SOUND + "seam left -- right\n",
        SOUND.replace("}", "  seam left -- right\n}"),
    ),
    Entry(
        "block-twice",
        "Two blocks of one title and version",
        "Blocks are found by title and version, so a file has each pair only once. `version` left out is "
        "version 1.",
        SOUND + SOUND.partition("\n")[2],
        SOUND + SOUND.partition("\n")[2].replace('"Trial"', '"Trial" version 2'),
    ),
    Entry(
        "nesting-too-deep",
        "Braces or brackets stand too deep",
        "Turns, mirrors and bracketed phrases may stand inside one another, up to 64 deep. Real blocks "
        "need three or four; more is usually a brace or a bracket that was never closed.",
    ),
    Entry(
        "statements-too-many",
        "More statements than a file may have",
        "A file holds up to 100,000 statements. Share the blocks out over several files; a block finds "
        "the others beside it.",
    ),
    Entry(
        "blocks-too-many",
        "More blocks than a file may have",
        "A file holds up to 2,000 blocks and quilts. Share them out over several files; a block finds the "
        "others beside it.",
    ),
    Entry(
        "words-too-many",
        "More words than a file may have",
        "A file holds up to 500,000 words, numbers and signs: five for each of the statements that it may "
        "hold. Share the blocks out over several files; a block finds the others beside it.",
    ),
    Entry(
        "pages-too-many",
        "Sheets of more pages than anybody prints",
        "All sheets of one block, or its booklet, may take up to 400 pages, most of a ream. More is "
        "usually a slip of the pen, such as inches for millimetres. No sheets are made of the file; those "
        "of other files are.",
    ),
    Entry(
        "errors-too-many",
        "A file of little but mistakes",
        "After the first hundreds of mistakes the rest of the file is not told of: it is probably not a "
        "block file, or one early mistake causes all the others. Mend the first ones and check again.",
    ),
)
