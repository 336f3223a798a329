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

# The four words, the same everywhere.
sync-waiting = Saved on this phone
sync-sending = Sending
sync-stored = In the record
sync-needs-you = Needs you

# The line that is always in sight; none is said too. $when and $since are ready-made times.
sync-unsent = { $count ->
    [0] All sent
    [one] { $count } not sent
   *[other] { $count } not sent
 }
sync-all-sent-at = All sent, last { $when }
sync-oldest = oldest { $since }
sync-needing-you = { $count ->
    [one] { $count } needs you
   *[other] { $count } need you
 }
sync-last-sent = Last sent { $when }
sync-last-pulled = Record as of { $when }
sync-never-pulled = The record has not been fetched to this phone yet.
sync-next-try = Tries again { $when }
sync-send-now = Send now
sync-keep-open = Keep the app open while it sends.
sync-sign-in-needed = Sign in to read the record again. What you file goes on being handed in without it.
sync-server-differs = The record's own working-out differs from this phone's. The record's stands; both are shown.
sync-kept-by-browser = The browser has promised to keep what is stored on this phone.
sync-not-kept-by-browser = The browser may clear what is stored here when it runs out of room. Add the app to the home screen, and send soon.
sync-tries = { $count ->
    [one] Failed { $count } time while others went through.
   *[other] Failed { $count } times while others went through.
 }

# Why nothing gets through just now.
network-no-network = No network. Everything is saved on this phone and goes out by itself later.
network-timed-out = The network is too slow just now. Everything is saved on this phone; it is tried again by itself.
network-not-ours = This network answers in place of our server. Open a web page and sign in to the network, or use another.
network-not-understood = The answer arrived damaged, so nothing in it was trusted. It is tried again by itself.
network-busy = The server is busy. It is tried again by itself.
network-server-trouble = The server has a fault. Everything is saved on this phone; it is tried again by itself.
network-practice-closed = The server does not take entries from this phone for this practice. Nothing is lost: ask who runs your practice's record.
network-app-too-old = This app is too old to read the record. Close it and open it again with network. What you file is still handed in.
network-record-differs = The record fetched does not fit what this phone has read before. Nothing of it was taken over. Tell who runs your practice's record.

# What is wrong with the phone's own store.
storage-blocked = An older window of this app keeps the store closed. Close its other windows, then open this one again.
storage-reload-needed = A newer window of this app needs the store. What was saved is safe: load this window again.
storage-lost = The browser has let go of the store and does not give it back. What is on the screen is not saved yet: note it down, then load again.
storage-full = There is no room left on this phone. What is on the screen is not saved yet: make room, then try again.

# Why an act was not done.
phone-sign-in-needed = Sign in first.
phone-already-filed = This was filed already, perhaps in another window.
phone-not-valid = This cannot be filed yet.
phone-too-large = This is too long to be filed.
phone-wrong-login = Name or password is not right.
phone-wait = Too many tries. Wait a little, then try again.

# Why an entry needs a person, by the server's code or the phone's own.
entry-held = The record keeps this aside until somebody decides.
entry-refused = The record did not take this. It is safe on this phone.
entry-set-aside = This failed several times while others went through. It is safe on this phone and is tried every hour.
entry-unreadable = This phone can no longer open this entry.
entry-patient-missing = No animal is named in it. File it again for an animal.
entry-id-conflict = The record has another entry of the same id. This one is safe on this phone: tell who runs your practice's record.

## errors: what went wrong and what to do

# Ids are `error-` and the code of a problem, or of an answer to one entry, with hyphens. Each says what to do.
error-sign-in-wrong = The login or the password is not right. Check both and try again.
error-too-many-tries = Too many tries. Wait a quarter of an hour, then try again. What is saved on this phone stays.
error-sign-in-needed = Sign in to read the record. What is saved on this phone is still handed in.
error-device-unknown = The server does not know this phone any more. Sign in; nothing saved on this phone is lost.
error-role-not-allowed = Your role may not do this. Ask a manager of your practice.
error-request-not-ours = This request did not come from the app itself and was refused. Open the app again and retry.
error-not-found = There is nothing here, or it is not yours to see.
error-method-not-allowed = The server does not do this here.
error-request-wrong = The server could not make sense of this request.
error-query-wrong = A part of this address is not in the form that is needed.
error-media-type-wrong = The server does not take this form of data here.
error-too-large = This is larger than the server takes at once.
error-server-error = Something went wrong on the server. Nothing on this phone is lost; try again later.
error-record-busy = The record is busy. It is tried again by itself.
error-migration-needed = The server was updated and its database not yet. Run: quietcuff migrate
error-database-unready = The server cannot write to its database. Look at its disk and its log.
error-client-not-built = The app is not built on this server yet. Run: python3 -m demo --prepare
error-cursor-void = The record on the server was restored. This phone reads it anew and offers again what it filed.
error-bundle-too-large = Too much was handed in at once. It is tried again in smaller parts.
error-too-many-entries = Too many entries were handed in at once. It is tried again in smaller parts.
error-encoding-unknown = The server does not know this way of packing data. Update the app.
error-gzip-damaged = What was handed in was damaged on the way. It is tried again.
error-bundle-unreadable = What was handed in cannot be read as a whole. Update the app, then try again.
error-practice-differs = What was handed in names another practice. Sign in at the practice it was made for.
