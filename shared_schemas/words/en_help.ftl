### Sentences of help, this phone and training, in English. Loaded with those screens, so that the first one stays light.

## help

help-here = All of this is on this phone. It needs no network.
help-asked = Where you are
help-steps = The steps of a visit
help-rest = Everything else
help-your-practice = your practice

help-species = Drawings for
help-ready = Ready?
help-ready-1 = One no is enough. Help the animal first, or say “not today”: not measuring is a result too, and is filed as one.

help-calm = Calm
help-calm-1 = The quiet time goes on when the screen is dark or the app was closed. Several animals can have theirs at once; each is shown on the round.
help-calm-2 = Note who is there, how it is held, and every drug of today with its hours. They change what may be said about the number.

help-cuff = Cuff
help-cuff-1 = The app looks for the width that fits among those in your bag.
help-cuff-2 = Sites that must not be used are left out. Why stands on the animal's page.

help-readings = Readings
help-readings-1 = Each reading is on this phone's disk before you see it: a dead battery takes nothing.
help-readings-2 = Set a reading aside when you saw why: it moved, purred, tensed. It stays in the record with its reason.
help-readings-3 = Mean and category stay hidden until Finish, so that they do not steer what you set aside.

help-result = Result
help-result-1 = “How this was worked out” shows every reading and rule, with its figures and where they come from.
help-result-2 = An emergency is a reason to call, not to go on measuring.

help-words = The words of a visit

help-sending = What the words of sending mean
help-sending-1 = Every entry is at one of four places. The number of those not sent stands at the top of every screen.
state-means-waiting = It is written to this phone's disk and to nowhere else. It goes out by itself when there is a network and the app is open.
state-means-sending = It is on its way. Until the record has answered, it counts as not sent.
state-means-stored = The record has answered for it. This phone could be lost now, and the entry would not be.
state-means-needs-you = The record has not taken it. The outbox says why, and nothing is lost meanwhile.

help-cautions = Before you rely on it

help-first = The first day
help-first-1 = Put the app on the home screen, open it from there, and sign in once with a network.
help-first-2 = On “This phone”, look whether it is ready to work without a network.
help-first-3 = Enter your cuffs in the bag, then try a whole visit in training.

help-offline = Without a network
help-offline-1 = Everything works without a network but the first sign-in, sending, and fetching what others filed.
help-offline-2 = The app must be open to send. Open it when the network is back, and wait until 0 is not sent.
help-offline-3 = Whether this phone is ready for it, and what to do where it is not:

help-training = Training
help-training-1 = A place apart to try things. Nothing made there can reach the record.
help-training-2 = The word Training and a ground of another colour are on every screen of it.

help-report = Something is wrong
help-report-1 = Tell whoever runs the record of { $practice }, at { $address }. Say what you did, what you saw, and the two versions below.
help-report-2 = Write down the readings on the screen first when something was not saved.

help-versions = Versions
version-rules = Rule set
version-build = Build
build-not-known = not known

## this phone

prepare-title = Prepare for offline
prepare-working = Trying each of these now
prepare-ready = Ready: this phone works a day without a network.
prepare-not-ready = Not ready
prepare-again = Check again
check-there = ready
check-missing = missing

check-shell = The app's files
check-shell-ok = All { $files } are on this phone.
check-shell-missing = { $missing } of { $files } are gone from this phone. Fetch them with a network.
check-shell-none = They are not kept yet. Keep the app open with a network for a moment, then check again.
mend-shell-missing = Fetch the missing files
shell-not-fetched = The files could not be fetched. Try again with a network.
check-start = Start without a network
check-start-ok = The app starts from this phone alone.
check-start-no = It would not start. Keep the app open with a network until its files are here, then check again.
check-store = Keeping what you type
check-store-ok = A try was written to the disk and read back.
check-store-blocked = An older window of this app keeps the store closed. Close its other windows, then check again.
check-store-reload_needed = A newer window of this app needs the store. Load this window again.
check-store-lost = The browser does not give the store back. Load this window again; tell whoever runs your practice's record if that does not help.
check-store-full = There is no room left. Delete pictures or apps you do not need, then check again.
check-keys = Opening what is kept
check-keys-ok = The keys of this phone open it.
check-keys-no = What is kept here cannot be opened. Sign in again with a network.
check-record = The record
check-record-ok = As of { $when }. Fetch it anew before a long day: open the outbox, Send now.
check-record-never = It was never fetched to this phone. Sign in and stay on the round with a network for a moment.
check-bag = The bag
check-bag-ok = The cuffs you carry are on this phone.
check-bag-unchosen = There are several bags, and none is chosen for this phone. Open Bag from the round and tap the one you carry.
check-bag-no = No cuffs are entered, so none can be chosen for you. Enter them in the bag.
check-promise = The browser's promise
check-promise-ok = The browser has promised to keep what is stored here.
check-promise-no = The browser may clear what is stored here when it runs out of room. Ask it to keep it.
mend-promise-no = Ask the browser to keep it
promise-refused = The browser did not promise it. Put the app on the home screen, open it from there and ask again; until then send at the end of each day.
check-room = Room
check-room-ok = { $free } are left for the app.
room-mb = { $n } MB
room-gb = { $n } GB
check-room-tight = { $free } are left and { $used } % are used. Send what is not sent, then make room on this phone.
check-room-unknown = This browser does not tell how much room is left.
check-clock = The clock
check-clock-ok = It agrees with the server's to within 2 minutes.
check-clock-off = It is { $minutes } minutes off the server's. Let the phone set its time by itself, in its own settings.
check-clock-unknown = Not compared with the server yet. It is at the next contact.

install-done = The app was opened from the home screen.
choices-title = On this phone
look-title = Look
hand-title = The hand that holds the phone
buzz-title = When a quiet time is over
buzz-silent = Stay silent
buzz-once = Buzz once
mean-title = Mean and category while measuring
mean-hide = Hidden until Finish
mean-show = Shown
mean-why = Seeing them steers which readings people set aside. A choice for your practice.

## training

training-what = Try a whole visit here, as often as you like. It works without a network.
training-never = Nothing you do in training goes into the record, is sent, or is counted as not sent.
training-enter = Begin training
training-leave = Back to the record
training-clear = Start training anew
training-clear-ask = Take away every animal, measurement and draft made in training? The record is not touched.
training-clear-yes = Take them away
training-clear-no = Keep them
training-cleared = Training begins anew. The record was not touched.
sample-cat-calm = Pebble
sample-cat-old = Mistle
sample-dog-small = Bodkin
sample-dog-large = Harrow
sample-mark = for training
sample-gauge = Training gauge
sample-bag = Training bag
