### Every sentence shown, in English. Numbers are formatted before they reach a sentence.

## why: what is wrong with a field (wire checks, command line)

# One line for a person: where, then what is wrong there. $path is a JSON Pointer, $reason one of the sentences below.
why-line = { $path }: { $reason }
why-whole-document = the whole document

why-not-an-object = this must be an object with named fields.
why-not-a-list = this must be a list.
why-not-text = this must be text.
why-not-a-whole-number = this must be a whole number, without quotes and without a fraction.
why-not-true-or-false = this must be true or false.
why-unknown-key = no field of this name is known here. Was it mistyped?
why-missing = this is needed and was left out.
why-too-few-items = there are too few entries in this list.
why-too-many-items = there are too many entries in this list.
why-too-short = this text is too short.
why-too-long = this text is too long.
why-wrong-form = this is not written in the form that is needed here.
why-not-in-list = this word is not one of those that can stand here.
why-below-minimum = this number is below what can be entered here.
why-above-maximum = this number is above what can be entered here.
why-id-twice = an earlier reading of this measurement has the same id. Each needs its own.
why-numbers-and-beyond = this reading has numbers and also says that there was no number. Only one of the two can be true.
why-neither-numbers-nor-beyond = this reading has no systolic pressure, and does not say why there is none.

why-unreadable-not-utf8 = this cannot be read: the text is not in UTF-8.
why-unreadable-not-json = this cannot be read: it is not one JSON document.
why-unreadable-key-twice = this cannot be read: a field stands twice in the same object.
why-unreadable-not-finite = this cannot be read: a number in it is endless, no number at all, or far too long.
why-unreadable-too-deep = this cannot be read: it is nested more than 16 levels deep.
why-unreadable-lone-surrogate = this cannot be read: a text in it holds half of a character.
why-engine = the phone's engine could not work this out.

why-no-engine = The phone's engine is not built. Build the client first (python3 -m demo --prepare does it), then try again.
why-no-node = The phone's engine needs Node, and there is none on this machine. Install Node, or leave out --engine phone.
why-engine-stopped = The phone's engine stopped without an answer.

## screens: labels, hints, buttons

## rules: verdicts, cautions, categories, how this was worked out

## sync: saved, sending, in the record, needs you

## errors: what went wrong and what to do
