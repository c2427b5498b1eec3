# Dentwright in English. The trade's own words; every text has the same name in all languages.

## Everywhere
home = All jobs
skip = Skip to the page
settings = Settings
to-light = Bright screen, for outdoors
to-dark = Dark screen, beside the panel
opening = Opening …
again = Try again
close = Close
undo = Undo
save = Save
saved = Saved
all-saved = All saved
cancel = Cancel
never-mind = Never mind
offline = The program does not answer.
offline-next = Check that it is running and that this device is on the same network. What you typed is kept here.
app-problem-next = Load the page again. What you typed is kept on this device.

## Pairing
pair = Pair this device
pair-help = The computer that runs Dentwright shows a code and a QR picture. Scan the picture, or type the code here. It works once.
pair-code = Code
pair-now = Pair
pair-other = Another device
pair-other-help = A phone or tablet in this network may be let in with a code. It works once, for 15 minutes.
pair-show = Show a code
pair-picture = QR picture of the address

## Jobs
jobs = Jobs
take-car-in = Take a car in
find = Find
find-hint = Plate, name, VIN, number, words in notes
stage = Stage
all-stages = All stages
stage-taken_in = Taken in
stage-quoted = Quoted
stage-authorised = Authorised
stage-in_work = In work
stage-finished = Finished
stage-handed_over = Handed over
jobs-found = { $count ->
    [one] One job
   *[other] { $count } jobs
}
no-jobs = No car is in yet
no-jobs-next = Take the first one in: a name and a plate are enough to start.
nothing-found = Nothing found
nothing-found-next = Try fewer letters, or all stages.
unnamed-car = Car without a name
promised-on = promised { $date }
damages-count = { $count ->
    [one] 1 damage
   *[other] { $count } damages
}
dents-count = { $count ->
    [0] no dents yet
    [one] 1 dent
   *[other] { $count } dents
}
readings-count = { $count ->
    [one] 1 reading
   *[other] { $count } readings
}
photos-count = { $count ->
    [one] 1 photo
   *[other] { $count } photos
}

## Customer and car
take-in-hint = The name is enough to start. The rest can wait.
to-the-damage = To the damage
empty-form = Empty the form
customer-name = Customer
phone = Phone
email = E-mail
address = Address
plate = Plate
make = Make
model = Model
vin = VIN
vin-hint = 17 characters, on the door pillar or behind the windscreen
vin-count = { $count } of 17 characters
vin-asking = Checking …
vin-good = The check digit is right
vin-plain = Well formed. Cars from outside North America carry no check digit.
vin-bad = This is no VIN: it has 17 characters and never I, O or Q.
promised = Promised for
colour = Colour
year = Year
odometer = Odometer
more-fields = More
paint = Paint
paint-hint = Gauge readings, repaint, film
high-voltage = Electric or hybrid, more than 60 V
not-looked = Not looked
yes = Yes
no = No
notes = Notes
remove-job = Remove the job
job-removed = Job { $number } removed
steps = Steps of the job
step-car = Car
step-damages = Damage
step-quote = Quote
step-papers = Papers

## The drawn car
where-is-it = Where is the damage?
car-drawing = The car, seen from above, sides folded out
car-front = front
tap-a-panel = Tap the panel, then the place on it.
rear-end = Rear end
or-from-list = Or from the list
choose-panel = Choose a panel
place-help = Tap the place, or move the mark with the arrow keys.
place-pad = Place on the panel: { $panel }
place-is = Mark at { $across } % from the left and { $down } % from the top
add-damage = Damage is here
damages = Damages
no-damages = None marked yet.
damage-title = { $number } · { $panel }
remove-damage = Remove the damage: { $panel }
damage-removed = Removed: { $panel }
to-the-quote = To the quote
panel-bonnet = Bonnet
panel-roof = Roof
panel-boot_lid = Boot lid
panel-tailgate = Tailgate
panel-front_wing_left = Front wing, left
panel-front_wing_right = Front wing, right
panel-rear_wing_left = Rear wing, left
panel-rear_wing_right = Rear wing, right
panel-front_door_left = Front door, left
panel-front_door_right = Front door, right
panel-rear_door_left = Rear door, left
panel-rear_door_right = Rear door, right
panel-roof_rail_left = Roof rail, left
panel-roof_rail_right = Roof rail, right
panel-front_bumper = Front bumper
panel-rear_bumper = Rear bumper
panel-sill_left = Sill, left
panel-sill_right = Sill, right
panel-fuel_flap = Fuel flap

## Damage
back-to-car = Back to the car
way-in = How the dents come in
by-hand = Count by hand
by-photos = Read from photos
count-dents = Count
kind = Kind
kind-round = Round
kind-hail = Hail
kind-soft = Soft
kind-sharp = Sharp
kind-crease = Crease
kind-high = High
depth = Depth
depth-faint = Faint
depth-shallow = Shallow
depth-clear = Clear
depth-deep = Deep
place = Place
place-flat = Flat
place-body_line = On a line
place-edge = Near an edge
place-rail = On a rail
access = Access
access-open = Open
access-trim_off = Trim off
access-braced = Behind a brace
access-glue_only = Glue only
access-none = None known
metal = Metal
metal-steel = Steel
metal-high_strength_steel = High-strength steel
metal-aluminium = Aluminium
size = Size
gauge-circles = Circles
gauge-coins = Coins
gauge-typed = Type it
tap-to-count = One tap, one dent.
count-size = Count one of { $size }
across = Across
along = Along
along-hint = If it is long
deep-hint = Else { $depth }
count-this = Count it
number-over-zero = A number over zero
number-wanted = A number is wanted here
dents = Dents on this panel
no-dents = Nothing counted yet. Tap a size.
from-reading = from a reading
one-fewer = One fewer: { $dent }
one-more = One more: { $dent }
remove-dent = Remove: { $dent }
notes-and-photos = Note and photos
note = Note
add-photos = Add photos
photo-number = Photo { $number } of this damage

## Reading
readings = Readings
open-map = Map of { $when }
upload-capture = Photos of mirrored lines
upload-help = All photos of one capture together, with its capture.toml. Or one zip of the folder.
upload-drop = You can also drop the folder here.
choose-photos = Choose photos
too-large = These files have { $size } MB together.
too-large-next = At most 400 MB go in one upload. Choose only the photos of this capture.
being-read = Reading the panel
read-cancelled = Stopped. The photos are kept.
reading-stage-sending = Sending
reading-stage-photos = Opening the photos
reading-stage-tags = Finding the tags
reading-stage-lines = Following the lines
reading-stage-poses = Where camera and board stood
reading-stage-shape = Shape of the panel
reading-stage-spots = Lows and highs
back-to-damage = Back to the damage
map-of = Map: { $panel }
map = Map of lows and highs
map-keys = Keys: arrows move the mark, Shift finer; + and − zoom, 0 shows all; N and P go through the spots; C starts a cut.
touch-the-map = Touch the map
not-read = Not read here
low = Low
high = High
within-limit = within the limit
zoom-in = Closer
zoom-out = Farther
whole-map = Whole map
tools = What a finger does
tool-value = Value
tool-move = Move
tool-cut = Cut
tool-help-value = One finger shows the value with its doubt (2σ), two fingers move and zoom.
tool-help-move = Drag the map. Two fingers zoom.
tool-help-cut = Drag a line across the map to see its profile.
scale = Colour scale
finer = Finer scale
coarser = Coarser scale
as-intended = as intended
limit-is = limit { $limit }
cut = Cut
cut-unread = Nothing was read along this line.
cut-words = { $length } long; lowest { $deepest }, highest { $tallest }. The band is ±2σ, the green strip your limit.
spots = { $count ->
    [0] No spots
    [one] One spot
   *[other] { $count } spots, deepest first
}
no-spots = No low or high stands out of the doubt.
panel-photo = The panel as the camera saw it
photo-help = The spots laid on the photo.
verdict-done = Done
verdict-not-done = Not done yet
verdict-cannot-tell = Cannot tell
verdict-words = { $verdict ->
    [done] Nothing that was read lies off by more than your limit of { $limit }.
    [not-done] { $lows ->
        [0] {""}
        [one] One low is deeper than your limit of { $limit }.
       *[other] { $lows } lows are deeper than your limit of { $limit }.
    } { $highs ->
        [0] {""}
        [one] One high is taller than { $limit }.
       *[other] { $highs } highs are taller than { $limit }.
    }
   *[cannot-tell] The doubt is too large for a limit of { $limit }, or too little was read.
}
limit-words = Your limit: { $depth } and { $slope } mrad, texture under { $scale } left out.
chance-within = Chance that everything read is within it: { $chance }.
may-be-over = { $chance } likely over the limit
settle-less_doubt = What would settle it: a reading with ± { $needed } there instead of ± { $now }. Bring the board closer, expose longer, or take more steps.
settle-at_the_limit = It lies at the limit: no reading will tell. Work it once more, or take it as not done.
settle-read_the_rest = A place inside was not read. Read it before you call it done.
settle-closer = A place is too steep to be read: bring the board closer.
read-part = { $part } of the panel in the picture was read.
scale-absolute = Heights are absolute.
scale-relative = Heights are relative only: the scale is not known.
take-spots = { $count ->
    [one] Take the spot into the quote
   *[other] Take { $count } spots into the quote
}
spots-taken = { $count ->
    [0] Nothing to take: all within the limit
    [one] One dent taken over
   *[other] { $count } dents taken over
}
not-read-why = Not read, and why
not-read-help = Hatched on the map. Tap a reason to see where.
unread-not_mirrored-what = The board is not mirrored here
unread-not_mirrored-next = To read it too, move the board or the phone until the lines cover it.
unread-tag-what = Under a tag
unread-tag-next = Nothing to do, unless there is damage under it: then move the tag.
unread-clipped-what = Too bright
unread-clipped-next = Take the photos with a shorter exposure.
unread-low_contrast-what = Lines too faint
unread-low_contrast-next = Darken the room, clean the panel, or expose longer.
unread-folded-what = The mirror image folds over
unread-folded-next = Too deep for this distance: bring the board closer, or add a gauge depth.
unread-not_followed-what = The lines cannot be followed in one photo
unread-not_followed-next = Slide the board for a full reading, or bring it closer.
unread-inconsistent-what = The photos do not agree here
unread-inconsistent-next = Look for something that moved, and take the photos again.
unread-gauged-what = Filled in from a gauge depth
unread-gauged-next = The smoothest shape that meets it. Bring the board closer to read it.
too-steep-to-read = Too steep to read here
at-least = at least
at-least-low = Low of at least { $depth }
at-least-high = High of at least { $depth }
low-or-high-not-told = Low or high: its rim does not tell
middle-too-steep = the middle, { $across } across, was too steep to read
place-too-steep = { $across } across, too steep to read. Bring the board closer, or measure the depth.
deeper-than-priced = may be deeper than priced
gauge-depths = Depths by gauge
gauge-add = Add a gauge depth
gauge-tap = Tap the map where the gauge’s tip stood.
gauge-place = At { $x }, { $y } mm. Tap the map to move it.
gauge-how = Measure at the deepest place, against the sound metal all round: a straightedge and feelers, or a dial gauge zeroed beside the dent. It fills in what was too steep to read.
gauge-way = Low or high
gauge-depth = Depth or height
gauge-more = Doubt, and a gauge on feet
gauge-doubt = Doubt, plus or minus
gauge-doubt-hint = A dial gauge held by hand: 0.05 mm.
gauge-feet = Feet of the gauge
gauge-feet-none = None
gauge-feet-beside = Left and right
gauge-feet-above = Above and below
gauge-span = Distance between the feet
gauge-span-hint = Zero it on a flat plate: the panel’s own curve is taken off by the map.
gauge-join = Join it to the map
gauge-added = Depth joined to the map
gauge-take-back = Take it back
gauge-filled = { $across } across filled in as the smoothest shape that meets it. Spots and verdict use it.
gauge-agrees = The map has { $map } ± { $doubt } there: they agree.
gauge-near = The map has { $map } ± { $doubt } there: a little more apart than their doubt.
gauge-disagrees = The map has { $map } ± { $doubt } there: they disagree. Check the tag size, the board size, the gauge’s zero and the place.
number-above-zero = A number above zero
quote-at-least = { $count ->
    [one] One dent was too steep to read in part: it is priced at the depth that it surely has, and may be deeper.
   *[other] { $count } dents were too steep to read in part: they are priced at the depth that they surely have, and may be deeper.
}
about-this-reading = About this reading

## Before and after
before-and-after = Before and after
before = Before
after = Now
change = Change
what-is-shown = What the map shows
came-up = came up
went-down = went down
unchanged = unchanged
comparing = Laying the readings on each other …
moved = Metal moved
moved-up = Up
moved-down = Down
left-before = Damage left before
left-after = Damage left now
nothing-changed = Nothing changed beyond the doubt of the two readings.
worked = { $count ->
    [one] One place changed
   *[other] { $count } places changed, the most changed first
}
way-better = better
way-worse = worse
from-to = { $before } → { $after }
laid-by-tags = { $moved ->
    [0] Laid on each other by { $count } tags that stayed, to ± { $within }.
   *[other] Laid on each other by { $count } tags that stayed, to ± { $within }; { $moved } lie elsewhere now.
}
laid-by-shape = The tags were replaced: laid on each other by the paint’s own texture, { $likeness } alike, to ± { $within }.
not-laid = Not laid on the last one
series = The repair, reading by reading
map-of-reading = Map of reading { $number }
what-was-left = What was left, mm³
left-words = From { $first } mm³ to { $last } mm³ of lows and highs. Bars are ±2σ.

## Texture
texture = Texture
texture-matches = No place differs from the rest of the panel.
mark-rougher = Rougher than the panel: { $times } times, { $area } mm². A tool may have marked it.
mark-smoother = Smoother than the panel: { $times } times, { $area } mm². It may have been polished.
texture-by-scale = By scale
texture-bar = Share
waves = Waves
too-fine = too fine to see
texture-ground = Of sound metal, dents left out; figures of ISO 25178-2 for waves under { $longest }. The reading’s own noise is in the finest band.

## Body line
follow-line = A body line runs along this cut
body-line = Body line
line-height = Height of the line
line-sideways = Sideways
line-sharpness = Sharpness
most = most { $value }
line-ground = Against the line’s own run in sound metal; sharpness 1 is as the rest of it. Bands are ±2σ.

## Taking a reading along
take-along = Take it along
form-zip = the whole reading, for another Dentwright
form-png = the map as a picture
form-svg = the map as a drawing, true to scale
form-ply = the surface, with deviation and doubt
form-stl = the surface as triangles
form-x3p = heights, ISO 25178-72
form-csv = a table, one line a place
open-packed = Open a packed reading (zip)

## Cautions
cautions = Take care
caution-airbag_curtain-title = Curtain airbag
caution-airbag_curtain = Curtain airbags lie along the roof rails behind the headlining. Before trim comes off or a tool goes in there, disconnect and wait as the vehicle maker says.
caution-airbag_seat_pillar-title = Airbags and belt tensioners
caution-airbag_seat_pillar = Seats and pillars hold airbags and belt tensioners. Before work at them, disconnect and wait as the vehicle maker says; keep tools and heat away from them.
caution-high_voltage-title = High voltage
caution-high_voltage = This car carries more than 60 V DC. Only trained people isolate it and prove it dead. Keep heat and tools away from the battery and from orange cables.
caution-voltage_unknown-title = High voltage not known
caution-voltage_unknown = Nobody has noted yet whether this car carries more than 60 V DC. Look at its papers and under its bonnet first; where it does, only trained people isolate it and prove it dead.
caution-gas_strut-title = Gas struts
caution-gas_strut = Struts are under pressure. Prop the lid before a strut comes off, and never heat a strut.
caution-solvent-title = Solvent
caution-solvent = Cleaning alcohol catches fire easily: isopropanol gives off vapour that burns from 12 °C. No heat and no spark until it has gone; air the place.
caution-hot_glue-title = Hot glue
caution-hot_glue = Hot glue burns the skin. It can also lift paint that is weak or was painted over: look at the paint first.
caution-noise-title = Noise
caution-noise = Hammering on sheet metal reaches about 93 dB(A). Wear hearing protection.
caution-eyes_hands-title = Eyes and hands
caution-eyes_hands = Wear eye protection, and gloves at sheet edges.
caution-radar_camera-title = Radars and cameras
caution-radar_camera = Radars and cameras sit behind bumpers, in mirrors and lids. After removing and installing them a recalibration may be due: ask the vehicle maker’s procedure.
caution-bonded_structure-title = Bonded and welded structure
caution-bonded_structure = Bonded or welded structure is never detached for access.
caution-corrosion-title = Corrosion protection
caution-corrosion = Restore the corrosion protection behind the panel after the work, and close every opening with its plug.
caution-heat_paint-title = Heat and paint
caution-heat_paint = Warm paint only as far as the lowest limit that applies to it, the panel and what lies behind. Nothing can be promised about paint: it may crack, above all where it was painted over.

## Quote
gross-with-tax = Price with tax
hours-on-dents = Hours on the dents
low-guess = low
high-guess = high
span-words = { $label }: likely { $likely }, between { $low } and { $high }
span-ground = One time in ten it takes less than low, one in ten more than high. A model says so; your own timing beats it.
lines = Lines
no-lines = Nothing to charge yet. Count dents or take the spots of a reading.
what = What
quantity = Quantity
unit-price = Each
amount = Amount
net = Net
tax-of = Tax { $percent } %
gross = Total
line-dent = Dents
line-remove_install = Remove and install
line-part = Part
line-sundry = Sundry
line-uplift = Uplift
line-discount = Discount
rate-and-tax = Rate and tax
hourly-rate = Hourly rate
tax = Tax
ri-lines = Remove and install
add-ri = Add trim to take off
hours = hours
uplifts = Uplifts
add-uplift = Add an uplift
on-dents = on dents
on-labour = on labour
on-all = on all
stacking = Several uplifts
stack-add = add up
stack-compound = compound
parts-and-sundries = Parts and sundries
add-sundry = Add a part or sundry
counted-in = Counted in
line-removed = Removed: { $what }
remove-line = Remove: { $what }
discount = Discount
take-off = Take off
discount-in = in
what-drove = What drove the hours
factor-area = area
factor-depth = depth
factor-sharpness = sharpness
factor-kind = kind
factor-metal = metal
factor-access = access
factor-place = place
factor-count = number
as-compared = as the dent compared with
to-the-papers = To the papers

## Papers
report = Report
report-holds = Car, damage, photos, map with its scale, dents, finish, quote, cautions, and how it was measured.
report-stays = It is made on this machine and sent nowhere.
report-being-made = Being made …
download-report = Download the report
report-ready = The report is saved

## Settings
on-the-screen = On the screen
language = Language
lengths = Lengths
temperatures = Temperatures
finish = Finish
finish-limit = Done means within
finish-limit-hint = A low or high larger than this is work still to do.
finish-slope = Steepest that is done
finish-slope-hint = µm per mm. It bends the mirrored lines.
finish-scale = Texture is shorter than
finish-scale-hint = Shorter waves are not judged.
finish-ground = Shipped: 10 µm, 1 mrad, 5 mm. At arm’s length 1 mrad moves a mirrored line by 1.2 mm, about where an eye begins to see it; common practice, no published source.
price = Price
currency = Currency
on-the-papers = On the papers
shop-name = Shop
tax-id = Tax number
coefficients = What hours depend on
coefficients-ground = These numbers are common practice, no published source. Set them by your own timed work.
hours-formula = The formula
hours-formula-text = hours = base × (area ÷ reference) ^ power × ((1 + depth ÷ reference) ÷ 2) ^ power × ((1 + sharpness ÷ reference) ÷ 2) ^ power × kind × metal × access × place × number ^ power
hours-base_hours = Base, h
hours-base_hours-hint = The dent compared with: round, 25 mm, 1 mm deep, flat, steel, open
hours-area_ref_mm2 = Area reference, mm²
hours-depth_ref_mm = Depth reference, mm
hours-sharpness_ref = Sharpness reference
hours-sharpness_ref-hint = Depth over half width
hours-area_power = Power of area
hours-depth_power = Power of depth
hours-sharpness_power = Power of sharpness
hours-sharpness_power-hint = At most the power of area
hours-count_power = Power of the number
hours-count_power-hint = Below 1, many alike cost less each
hours-spread_own = Spread of one dent
hours-spread_shared = Spread of the whole car
hours-spread_z = Spreads to low and high
hours-spread_z-hint = 1.2816 for one time in ten

## Printing
for-reading = For reading panels
print = Print tags and boards
print-what = What
print-stickers = Tags for the panel
print-stickers-help = Twenty tags to cut out. Stick four to eight flat on sound paint around the damage, never on it.
print-corners = Tags for a board
print-corners-help = Four tags for the corners of your own board.
print-lines = Line board
print-lines-help = Sheets of black and white lines to glue together, with a plan and the board’s description.
print-camera = Camera sheet
print-camera-help = Tags to photograph once per phone, so that its lens is known.
print-tag-size = Side of a tag’s black square
print-pitch = Pitch
print-pitch-hint = One black and one white line together
print-across = Sheets side by side
print-down = Sheets one above the other
print-paper = Paper
print-scale = Print at 100 %, never fitted to the page, and measure the two rulers on the sheet before you use it.
print-make = Make the PDF

## Live session
live = Live session
live-help = A television, monitor or tablet becomes the board, a phone on a tripod the camera. The screen steps through its patterns, the phone shoots each one: 26 photos in all.
live-begin = Begin
live-end = End the session
live-step-board = 1 · The screen
live-step-camera = 2 · The camera
live-board-help = On the screen that shall be mirrored, open this address. It must be in the same network.
live-board-here = Use this screen
live-board-known = The screen is ready
live-board-unknown = Waiting for the screen …
live-camera-help = Scan this with the phone.
live-camera-here = Use this device’s camera
live-camera-closed = Phones are let in when Dentwright is started with --lan. On this computer its own camera works.
live-warning = The phone warns of the certificate
live-warning-help = The connection is encrypted under this shop’s own authority, which the phone does not know. Accept the warning once (details, then visit the page), or open this address on the phone and trust the authority in its settings.
live-board = What the board shows
live-how-large = How large is this screen?
live-by-card = By bank card
live-by-tape = By tape
live-card-help = Hold a bank card flat against the screen, and make the frame exactly as large as the card.
live-tape-help = Measure the width of the bright area to the millimetre. All depths scale with it.
live-card-size = Size of the frame
live-smaller = Smaller
live-larger = Larger
live-measure-anew = Measure anew
live-lit-width = Width of the bright area
live-board-ready = Show the board
live-camera = Camera
live-wait-for-board = Waiting for the screen. Open its address there and say how large it is.
live-open-help = The picture stays in this network. The torch stays off.
live-open-camera = Open the camera
live-setup-help = Set-up photo, by hand: stand to the side so that the whole screen and all tags on the panel are in the picture, sharp.
live-take-setup = Take the set-up photo
live-panel-help = Now stand the phone on its tripod so that the screen’s mirror image covers the damage. Tap the panel to focus. Then touch nothing.
live-run = Start the run
live-setup-again = Set-up photo again
live-panel-again = Again from the panel photo
live-go-on = Go on
live-stopped = The run stands still.
live-do-not-touch = Do not touch the phone or the screen.
live-turn = { $turn } of { $turns } photos
live-done = All photos are taken. The panel is being read.
live-locked = Held: { $what }
live-lock-exposure = exposure
live-lock-focus = focus
live-lock-white-balance = white balance
live-insecure = The browser gives its camera to encrypted pages only.
live-insecure-next = Open the encrypted address from the QR picture, or use the computer’s own camera.
live-no-camera = The camera cannot be opened.
live-no-camera-next = Allow this page to use it, and close other programs that do.

## The mirror
mirror = Look again
mirror-back = Back to the map
mirror-picture = The measured panel under a board. Arrow keys move what is chosen; plus and minus bring it closer or farther.
mirror-no-graphics = This browser draws no 3-D graphics (WebGL 2). Use a newer one.
mirror-too-old = This reading does not say where camera and board stood. Read its photos again to look at it here.
mirror-which = Which reading
mirror-moves = A finger moves
mirror-lines = the lines
mirror-board = the board
mirror-eye = the eye
mirror-turn = Lines turned
mirror-away = Board farther
mirror-times = Deviation exaggerated
mirror-as-photographed = As photographed
mirror-compare = Beside the reading of { $when }
mirror-no-common-tags = The two readings share fewer than two tags, so one cannot be laid on the other.
mirror-help = Lines are mirrored as the measured shape would mirror them. Where the panel was not read, nothing is drawn. Two fingers or the wheel bring board or eye closer.

## Cameras
cameras = Phones and their lenses
cameras-help = A phone whose lens is known measures better. Once per phone and zoom is enough; again after a repair or a fall.
cameras-step-print = Print the camera sheet at 100 % and glue it on something flat.
cameras-step-shoot = Take six to twelve photos that are filled by it: straight on, tilted by 20 to 40 degrees to all four sides, some with the phone turned a quarter. One zoom, sharp, evenly lit.
cameras-step-send = Send them as the phone wrote them.
cameras-choose = Choose the photos
cameras-sending = Sending … { $percent } %
cameras-working = Finding the lens …
cameras-age = { $days ->
    [0] calibrated today
    [one] calibrated yesterday
   *[other] calibrated { $days } days ago
}
cameras-found = Focal length { $focal } ± { $doubt } px (2σ); corners fit to { $left } px
cameras-remove = Forget the calibration of { $phone }
cameras-none = No phone was calibrated yet.

### Ways of pricing, hours that learn
way = How the dents are priced
way-hours = By hours
way-size_classes = By size
way-hail_table = Hail table
way-day_rate = By the day
way-incomplete = Something is still missing here; the quote stays as it was.
size-up-to = Across, up to
any-larger = any larger
each-dent = Each dent
size-class = size { $number }
add-class = Add a size
classes-ground = A dent counts as the smallest size that it lies wholly inside. Leave the last size empty for all larger ones.
hail-table = Your table
table-choose = Choose a table
table-earlier = A table that is no longer offered
table-remove = Offer this table no longer
table-import = Import a table
table-form = A CSV file from any spreadsheet: a row for each panel and number of dents, a column for each size. * stands for all other panels.
table-per = A price is for
per-panel = the whole panel
per-dent = each dent
table-choose-file = Choose the CSV file
table-ends = not in the table
oversize-each = On top for each larger dent
oversize-hint = For dents larger than the table's last size
oversize-count = { $count } larger than all sizes
line-oversize = larger than the table's sizes
day-rate = A day
day-hours = Hours in a day
way-days = Days
way-days-hint = Leave empty for the likely hours, up to the next half day
days-of = { $days } d
size-rule = A dent's size
rule-gauge = Each its own
rule-majority = As most on the panel
both-rules = Both size rules
rules-panel = Panel
rules-ground = Insurers differ: each dent by the circle it lies wholly inside, or the whole panel at the size of its majority. Agree on one before work.
beside = Beside it
stacked-otherwise = Total if uplifts { $way }
share-technician = Technician's share
share-shop = Shop's share
share-on = Shared
conventional-net = Conventional repair, without tax
cheaper-by = This quote is less by
dearer-by = This quote is more by
conditions = Paint and temperature
paint-is = Paint
paint-factory = in order
paint-old = old, brittle
paint-repainted = painted again
panel-temperature = Panel temperature
panel-temperature-hint = Leave empty if nobody measured it
more-pricing = Share, comparison, tax
goods-tax = Tax on parts
goods-tax-hint = Only where it differs from the tax on work
tax-rounding = Tax is rounded
round-invoice = once, on the total
round-line = on every line
factor-paint = paint
factor-cold = cold
doubt-of = Where the doubt comes from: { $shop } from not knowing this shop's times yet, { $day } from the day, { $dents } from the dents themselves.
worked-time = Worked time
worked-whole = Whole job
worked-by-panel = Panel by panel
worked-hours = Worked on the dents
worked-hint = Without taking off and fitting trim
worked-save = Learn from it
worked-ground = Every job with its time moves the hours from common practice to your own.
worked-learned = Learned from { $hours }
worked-said = Worked { $worked }. Said before: { $middle }, between { $low } and { $high }.
worked-odd = Far from anything expected. Check the time before it is learned from.
worked-forget = Take the time back
foretold = How well hours were predicted
foretold-none = No finished job has its worked time yet. Until then the hours are common practice.
foretold-inside = { $inside } of { $jobs } jobs came between low and high: { $percent }. 80 % is right; with so few jobs { $low } to { $high } is chance.
foretold-miss = Half of them missed the middle by less than { $miss } times. On average the work took { $lean } times the middle.
foretold-plot = Said to come below, and did: { $points }
foretold-caption = Across: the share of jobs that was said to come below. Up: the share that did. On the dashed line the doubt is right. Every job was predicted before it was learned.
foretold-moved = What { $jobs } jobs changed most
foretold-start = at first
foretold-now = now
foretold-between = 8 of 10
hours-cold_times = Times for every 10 °C too cold
hours-cold_under_c = Warm enough from, °C
width = How far off it may be
width-base = Base
width-power = Powers
width-count_power = Power of the number
width-kind = Kind
width-metal = Metal
width-access = Access
width-place = Place
width-paint = Paint
width-cold = Cold
width-spread_weight = Timed dents the spreads are worth

### The metal
to-the-metal = What the metal holds
back-to-map = Back to the map
metal-of = { $panel }: what the metal holds
metal-ask = From the measured shape the program works out how far the sheet is stretched, where it is held under tension, and whether it will oil-can. It takes about a minute; everything is an estimate.
metal-spot = Low or high
metal-kind = Metal
thickness = Thickness of the sheet
thickness-hint = Leave empty when not measured: { $low } to { $high } mm are then taken.
thickness-wrong = 0.3 to 3 mm
metal-work-out = Work it out
metal-again = Work it out with another metal
metal-worked-out = Being worked out
metal-map = Map of what the metal holds
layer = Layer
layer-stretch = Stretch
layer-tension = Tension
layer-bent_outer = Bending, outer face
layer-bent_inner = Bending, inner face
tension-signs = Orange is pulled, blue is pressed together; the strokes show which way.
metal-holds = The metal
stretched = About { $value } stretched at most, doubt { $doubt }.
bent = Faces bent for good by up to { $value }, doubt { $doubt }.
pulled = Pulled with up to { $value } MPa, doubt { $doubt } MPa.
pressed-together = Pressed together with up to { $value } MPa, doubt { $doubt } MPa.
at-place = at x { $x }, y { $y }
metal-held = The metal is bent to at most { $share } of what would bend it for good: let go, it would spring back by itself. Something round it holds it in this shape: look for a crown or a crease and work that first. Where an edge or a bonded brace holds it, leave that as it is.
crown-holds = This crown holds the low beside it: release it first.
oil-can-now-unknown = Whether it oil-cans now could not be worked out.
oil-can-now-unstable = As it is, the sheet does not stay where it stands: it will pop.
oil-can-now-pops-stays = As it is, it pops at about { $force } (doubt { $doubt }) after { $travel }, and stays in its other shape.
oil-can-now-pops = As it is, it gives way at about { $force } (doubt { $doubt }) after { $travel }, and comes back.
oil-can-now-calm = As it is, it does not oil-can.
oil-can-level-unknown = Whether it would oil-can when brought level could not be worked out.
oil-can-level-unstable = Brought level it would oil-can: there is too much surface.
oil-can-level-pops-stays = Brought level it would oil-can: it pops at about { $force } (doubt { $doubt }) after { $travel } and stays.
oil-can-level-pops = Brought level it would be soft: it gives way at about { $force } (doubt { $doubt }) after { $travel } and comes back.
oil-can-level-calm = Brought level it would not oil-can.
metal-taken = Taken as { $metal }, { $low } to { $high } mm thick.
metal-misfit = The computed shape is { $misfit } off the measured one.
quick-off = A quick answer to a push was { $off } off the full one here.
metal-estimate = Every number is an estimate from a model.
try-a-move = Try a move
try-touch = Touch the map where the tip is to go.
move = Move
move-push = Push from behind
move-tap = Tap down
move-pull = Pull by a tab
tip = Tip
tip-sharp = Sharp, 8 mm
tip-ball = Ball, 16 mm
tip-blunt = Blunt, 30 mm
tip-flat = Flat, 16 mm
tip-strip = Long, 30 × 6 mm
tip-tab = Tab, 24 mm
travel = Travel from first touch
less = Less
more = More
no-quick-answer = No quick answer here: the sheet pops on the way, or the place is off the patch.
lift-held = Lift while held
lift-left = Lift that stays
stands-then = Stands then at
shoulder = Shoulder around
out-at = { $far } out
tip-force = Force of the tip
strain-spent = Metal spent
paint-risk = Paint, this move
paint-way-back = Paint, whole way back
risk-low = low risk
risk-raised = raised risk
risk-high = high risk
glue-holds = Glue
glue-metal = holds
glue-either = may let go
glue-glue = lets go first
hand-force = Force of the hand
bar-gives = Hand's way lost to the bar
bar-used = Bar, of its yield
paint-and-bar = Paint, temperature, bar
film-factory = Factory
film-refinish = Refinished
paint-aged = Aged or second paint
with-bar = Through a round steel bar over a fulcrum
bar-hand_mm = Fulcrum to hand
bar-tip_mm = Fulcrum to tip
bar-diameter_mm = Bar's diameter
try-estimate = Estimates, never a promise, least of all about paint. Follow the vehicle maker's procedure.
sheet-steel_dc04 = Steel, deep-drawing, as delivered
sheet-steel_dc06 = Steel, softest deep-drawing, as delivered
sheet-steel_bh180_panel = Steel, bake-hardening, finished panel
sheet-steel_bh220_panel = Steel, stronger bake-hardening, finished panel
sheet-steel_dp500_panel = Steel, high-strength, finished panel
sheet-aluminium_6016_panel = Aluminium 6016, finished panel
sheet-aluminium_5182_panel = Aluminium 5182, finished panel
### Papers of a job
papers-issue = Issue a paper
papers-issued = Issued
papers-none = No paper was issued yet.
paper-which = Which paper
paper-estimate = Estimate
paper-authorisation = Authorisation
paper-supplement = Supplement
paper-work_order = Work order
paper-evidence = Evidence
paper-certificate = Certificate of finish
paper-warranty = Warranty
paper-cancellation = Right to cancel
paper-invoice = Invoice
paper-credit_note = Credit note
paper-receipt = Receipt
paper-language = Language of the paper
paper-issue = Issue it
paper-being-made = Being made …
paper-issued = { $paper } { $number } is issued
paper-stays = What was issued is kept as it is. A wrong invoice is followed by a credit note.
paper-signed-by = signed by { $name }
paper-no-e-invoice = Without e-invoice: why
why-supplement = What changed, and why
why-credit_note = Why it is given back
amount-credit_note = Given back, without tax
amount-credit_note-hint = Leave empty for the whole invoice.
amount-receipt = Paid, with tax
amount-receipt-hint = Leave empty for all that is open.
paid-by = Paid by
means-10 = Cash
means-48 = Card
means-58 = Transfer
buyer-vat = Customer’s VAT number
buyer-vat-hint = Only where the customer is a business.
sign-name = Who signs
sign-here = Pad to sign on
sign-hint = Sign with a finger or a pen. The time is taken when the paper is issued.
sign-undo = Last stroke away
sign-clear = Clear
billing = How the shop bills
billing-country = Country of the shop
billing-country-none = by the currency
billing-vat = VAT number
billing-vat-hint = With the country’s letters, such as DE123456789.
billing-tax = Tax number
billing-register = Register number
billing-account = Account (IBAN)
billing-bank = Bank (BIC)
billing-days = Days to pay
billing-exempt = Why no tax is charged
billing-exempt-hint = Leave empty where tax is charged. A small business writes its rule here.
billing-save = Save
billing-saved = Saved

### Counting hail, and what waits on the device

hail-count = Count hail
hail-bar = Sizes and the chosen panel
hail-choose-panel = Tap a panel
hail-of = { $panel } here, { $total } on the car
hail-one = dent of { $size }
hail-add = One more of { $size }, { $count } so far
hail-choose-size = Choose { $size }
hail-help = Tap the chosen panel, +1 or a size: each tap is one dent, kept on this device at once.
hail-counts = Dents by panel and size
hail-all = Whole car
nothing = nothing
job-unsent = not sent yet
jobs-of-device = The shop’s server is out of reach. These are the jobs that this device knows.
photos-waiting = { $count ->
    [one] One photo waits on this device.
   *[other] { $count } photos wait on this device.
  }
waiting = Waiting to be sent
waiting-count = { $count ->
    [one] { $count } entry waits to be sent
   *[other] { $count } entries wait to be sent
  }
waiting-none = Everything has been sent to the shop’s server.
waiting-away = The shop’s server is out of reach. Everything is kept on this device and sent when it is reached again.
waiting-sending = Being sent.
waiting-not-kept = This browser keeps nothing when the page is closed (a private window?). Open Dentwright in an ordinary window before you enter more.
waiting-send = Send now
waiting-shop = The shop
waiting-new = New job
waiting-damage = Damage marked
waiting-tap = Dents counted
waiting-edit = Fields changed
waiting-entries = { $count ->
    [one] one entry
   *[other] { $count } entries
  }
clashes = Entered twice
clashes-help = Somebody else changed the same field while this device was away. Choose what holds; everything else has been laid together.
clash-mine = From this device
clash-theirs = From the other one
refused = Not taken
refused-help = The server did not take these. They stay on this device until you send them again or give them up.
refused-again = Send them again
refused-give-up = Give this up

### At the car

arrival = As it came
arrival-hint = What was there before the work, agreed with the customer beside the car.
panel = Panel
checklist = Photos
checklist-done = { $done } of { $all }
checklist-damages = Damages without a photo:
shot-front_left = Front left, with plate
shot-front_right = Front right
shot-rear_right = Rear right, with plate
shot-rear_left = Rear left
shot-instruments = Instruments, with odometer
shot-vin = Number on the car
shot-old = Old damage
shot-gauge = Paint gauge on the car
shot-missing = Tap to take it
shot-taken = Taken
shot-waits = Taken, waits to be sent
old-damage = Old damage
old-hint = Tap a panel, mark the place, say what it is. It is listed on what the customer signs and is no part of the work.
old-what = What it is
old-scratch = Scratch
old-chip = Stone chip
old-crack = Cracked paint
old-dent = Dent, not to be repaired
old-rust = Rust
old-broken = Broken or missing
old-repaired = Repaired before
old-mark = Old damage is here
old-remove = Remove the mark: { $panel }
old-removed = Mark removed: { $panel }
paint-readings = Paint readings
paint-thickness = Thickness
paint-wrong = A thickness over 0 and at most { $most } is wanted.
paint-keep = Keep the reading
paint-of = median of { $count }
paint-back = Take the last reading back: { $panel }
paint-says-usual = As the car’s other panels, { $others } in the middle.
paint-says-thick = Thicker than the car’s other panels: { $others } in the middle, most of them within { $spread } of it. It may have been painted over or filled: ask, and expect it to crack or lift sooner.
paint-says-thin = Thinner than the car’s other panels: { $others } in the middle, most of them within { $spread } of it. It may have been polished or sanded: little is left to polish.
paint-says-too_few = Too few to compare: read at least three other panels.
paint-rule = A panel stands out where its median is farther from the median of the other panels than 3.5 of their usual spread (Iglewicz and Hoaglin 1993). It says that the paint differs, not why.
metal-of-panel = Metal: { $panel }
sign-at-car = Agreed at the car
sign-old = { $count ->
    [0] No old damage is marked.
    [one] One old damage is marked and will be listed.
   *[other] { $count } old damages are marked and will be listed.
  }
consent-language = Language of the customer
consent-no-advice = From a country file of the program; no legal advice.
consent-away = The words come from the shop’s server, which is out of reach, and this device has not seen them in this language yet.
sign-keep = Keep what was signed
sign-wrong = Nobody has signed. Let the customer sign on the pad.
signed-at-car = Signed by { $name }
signed-on = Signed by { $name }, { $when }, with { $count ->
    [0] no old damage
    [one] one old damage
   *[other] { $count } old damages
  }.
signed-changed = The old damage has changed since: let it be signed again.

### Rehearse
rehearse = Rehearse
rehearse-about = A simulated panel under straight lines: push, pull, tap, and see what the sheet does. It counts for nothing and costs no car.
learner = Who learns
learner-missing = A name, so that the sheet is yours
panel-being-made = The panel is being made …
level = Level
level-done = { $tried ->
    [0] Not tried yet
   *[other] Finished { $done } of { $tried }
 }
level-first_ding = A first ding
level-about-first_ding = One round low.
level-wide_low = A wide low
level-about-wide_low = Soft and wide; the sheet gives far before anything stays.
level-sharp_low = A sharp low
level-about-sharp_low = The shoulders come up before the middle does.
level-cold_panel = A cold panel
level-about-cold_panel = Cold paint cracks. Think before the first push.
level-crease = A crease
level-about-crease = Long, with a ridge on either side.
level-two_lows = Two lows
level-about-two_lows = Each holds the other; aluminium springs back.
level-lows_at_a_line = Two lows beside a body line
level-about-lows_at_a_line = The line hides the tension.
learners-sheet = Learner's sheet
week-of = Week of { $date }
week-sum = { $count } panels, { $done } finished.
week-read = Read right { $reading }, tip off its aim { $aim }.
score-finished = Finished
score-reading = Read right
score-aim = Tip off its aim
score-moves = Moves
score-spent = Metal spent
score-left = Most left
score-snaps = Snapped
score-cracked = The paint cracked
score-done = Finished
score-not-done = Not finished
score-limit = done at { $limit }
from-front = { $count } from the front
read-lines = Slide the lines, move the board nearer and farther, move your head. Then touch the picture where metal stands low or high, and say which.
calling = What is there
say-it = That is what I read
take-back-mark = Take the last mark back
skip-reading = Begin to work
to-work = Begin to work
claim-right = Right: { $what }
claim-wrong = Not so: no { $what } that counts stands there
lines-wide = The lines are { $times } times as wide there as beside it.
lines-narrow = The lines are { $times } times as wide there as beside it: narrower.
lines-even = The lines are about as wide there as beside it.
lines-turned = The lines stand upside down there: slide them one way and they run the other. Width { $times } times.
width-tells-nothing = A low is a hollow mirror: near the board its lines are wide, from farther off they turn over and get narrow. Width alone tells neither low nor high. What moves against the board, and what changes when you step back, does.
board-away = From the panel to the board
tip-pad = Tip behind the panel: hold to lean it on, drag to move it
tip-pad-help = Hold here: the tip leans on from behind. Watch the lines to find it, and drag it to the low.
tip-pad-held = Leaning on. Drag until it stands where you want it.
touch-picture = Touch the picture where it is to go.
rehearsed-tip-sharp = Sharp, 6 mm
rehearsed-tip-ball = Ball, 12 mm
rehearsed-tip-blunt = Blunt, 24 mm
rehearsed-tip-tab = Tab, 24 mm
do-push = Push
do-tap = Tap
do-pull = Pull
sheet-settles = The sheet settles …
moves-made = { $count ->
    [0] No move yet.
    [1] 1 move.
   *[other] { $count } moves.
 }
move-held = The lines have moved.
move-nothing = It sprang back: nothing stayed.
move-snapped = The sheet snapped over.
move-cracked = The paint cracked.
move-lost = The sheet slipped away; it stands as before.
warm-panel = Warm the panel to 35 °C
end-rehearsal = I am done
rehearse-limits = The sheet answers by a computed model of invented panels; a blow is taken as a slow press. On a real car follow the vehicle maker's procedure.
replay = Replay
replay-play = Play
replay-stop = Stop
replayed = { $kind }: { $held } while held, { $left } stayed, tip { $aim } off its aim.
rehearse-again = Another panel
lens-calibrated = Lens calibrated on { $date }, { $days ->
    [0] on the same day
    [1] the day before
   *[other] { $days } days before
 }.

### The day
promised-time = At
car-place = Where it stands
car-place-hint = Where the car stands, or where you meet it
car-place-none = No place
order = In order of
order-promise = Promise
order-stage = Stage
order-place = Place
order-newest = Newest first
due-group-late = Late
due-group-today = Today
due-group-tomorrow = Tomorrow
due-group-later = Later
due-group-none = Not promised
due-group-done = Work done
due-late = { $days ->
    [one] one day late
   *[other] { $days } days late
}
due-late-today = late since { $time }
due-today = today
due-tomorrow = tomorrow
due-at = { $when }, { $time }
step-time = Time
clock = Time clock
clock-start = start
clock-stop = Stop
clock-runs = clock runs
clock-started = { $kind }: the clock runs
clock-stopped = { $kind }: stopped
clock-hint = Press what you do now. Another one stops the one before it; the same one again stops the clock.
who-works = Who works
me = Me
technician = Technician
work-kind = Work
work-push = Push
work-tap = Tap
work-glue = Glue
work-trim = Trim
work-reading = Reading
work-finish = Finish
work-here = This job
work-shop = The shop
work-shares = Where the time goes
work-shares-ground = All clocked time of the shop, by kind. What is in doubt or still runs is not in it.
time-sum = Worked on the dents, without trim
time-in-doubt = { $count ->
    [one] One entry is in doubt and counts nowhere until it is set right.
   *[other] { $count } entries are in doubt and count nowhere until they are set right.
}
time-to-learn = To the quote, to learn from it
time-by-hand = Enter time by hand
time-correct = Correct
time-from = From
time-until = Until
time-remove = Remove this entry
time-removed = { $kind }: entry removed
time-is-right = It is right as it stands
time-backwards = This entry ends before it begins: a clock was set back. Nothing is lost; set its start or end right.
time-left-running = { $hours } at a stretch: left running, perhaps overnight? Set its end right.
worked-from-clock = Take { $hours } from the clock
crew = Who works here
crew-hint = One who works alone needs nobody here. With two or more, each device asks who holds it.
crew-add = Add somebody
crew-name = Name
crew-gone = No longer works here
pay-by = Paid
pay-none = not by this sheet
pay-hour = by the hour
pay-share = a share of labour
pay-rate = Pay of an hour
pay-percent = Share of the labour
pay = Pay sheet
pay-before = Month before
pay-after = Month after
pay-until = Until, that day included
pay-nobody = Nobody has clocked yet.
pay-clocked = { $hours } clocked
pay-jobs = { $count ->
    [one] 1 job finished
   *[other] { $count } jobs finished
}
pay-by-hour = { $rate } an hour
pay-by-share = { $percent } % of the labour
pay-by-none = not paid by this sheet
pay-job = Job
pay-time = Time on it
pay-labour = Its labour
pay-part = Part
pay-unclocked = Finished, but nobody clocked on it, so in no row: { $jobs }
pay-unpriced = Finished, but its quote cannot be made in the shop’s currency: { $jobs }
pay-ground = Hours are those clocked in these days; time on two clocks at once counts once. A share is of the labour of the jobs finished in these days, by the time on each; where a job’s own quote shares net, that share holds. No wage law is checked here.
pay-csv = Save as a table (CSV)
data = Calendar, tables, archive
data-links = Calendar file, tables, the whole shop as one file
calendar = Calendar
calendar-help = Promised cars for your calendar, until they are handed over. A calendar program on this computer can follow this address; for another device, save the file.
calendar-get = Save the calendar file
tables = Tables
tables-help = For spreadsheets: commas, points in numbers, UTF-8 (RFC 4180).
table-jobs = Jobs
table-dents = Dents
table-lines = Lines of quotes
archive = The whole shop as one file
archive-help = Record, photos, maps and papers in one zip. Taken in elsewhere or here, it adds what is missing; what is there stays as it is.
archive-get = Save the archive
archive-take = Take an archive in
archive-sending = Sending the archive …
archive-opening = Checking and taking in …
archive-done = { $jobs ->
    [one] One job taken in
   *[other] { $jobs } jobs taken in
}, { $there ->
    [0] none was here before.
    [one] one was here already and stays as it is.
   *[other] { $there } were here already and stay as they are.
}
archive-renumbered = Job { $was } is now { $is }: its number was taken.
erase = Delete the customer’s data
erase-who = Everything that names { $name } goes from these jobs:
unnamed-customer = the customer
erase-only-name = only the name is the same
erase-goes = What goes
erase-goes-person = Name, address, phone, e-mail, plate, VIN, place, all notes
erase-goes-photos = { $photos } photos, { $readings } readings with their maps
erase-goes-papers = { $count ->
    [0] No papers without a number
    [one] One paper without a number, with its signature
   *[other] { $count } papers without a number, with their signatures
}
erase-stays = What stays
erase-stays-job = What names nobody: make and model, dents, quote, worked hours
erase-stays-paper = { $number }, until { $until }, because tax law wants it kept
erase-years = { $years } years after the year of issue; no legal advice. Source:
erase-when = It is done in ten minutes, by the shop itself. Until then it can be called off.
erase-now = { $count ->
    [one] Delete from this job
   *[other] Delete from { $count } jobs
}
erase-ordered = The customer’s data goes at { $time }
erase-waits = The customer’s data of this job goes at { $time }. Until then everything is still there.
erase-call-off = Call it off
erase-done = The customer’s data of this job went at { $time }. What is left names nobody.

### Two who edit one quote
trouble-quote_changed = This quote was changed on another device meanwhile.
trouble-quote_changed-next = What is entered here is kept on this device. Take over the other, or keep this one in its place.
take-theirs = Take the other one
keep-mine = Keep what is here

### Warming a spot
warm-it = Warm it
warm-with = With
warmer-hot_air = Hot air
warmer-lamp = Lamp
warmer-induction = Induction
warm-backing = On the back
backing-air = Air
backing-foam = Foam, felt
backing-brace = Bonded brace
warm-from = The panel has
warm-to = Warm it to
warm-behind = What must not get too warm
heat-paint = the paint itself
heat-battery = High-voltage battery
heat-adhesive = Bonded brace or seam
heat-temper = Aluminium panel
heat-foam = Foam, plastic trim
heat-wiring = Wiring
warm-reached = Warm enough after
warm-stays = Then stays over { $degrees } for
warm-limit = Never over
warm-over = That is too warm for what is there. The lowest limit wins.
warm-never = not within the hour
warm-long = an hour and more
span-seconds = { $low } to { $high } s
warm-ground = An estimate for a spot of 60 mm radius; what guns and lamps give differs. Measure on the paint. The vehicle maker’s limits come first. No heat near solvent or gas struts.
### The plan and the work
to-the-plan = Plan the repair
plan-on = Plan on
plan-on-help = Plans the next round with the same answers as before, for what stands out most now.
to-the-work = To work
to-work-without = Work without a plan
plan-of = { $panel }: the plan
plan-ask = From the measured shape the program works out which moves bring it level, and whether it can be done. It takes some seconds up to a minute; everything is an estimate.
plan-spot-deepest = What stands out most
plan-make = Make the plan
plan-other = Answer anew and plan
plan-worked-out = The plan is being made
plan-panel-c = Panel now
plan-most-c = Warmest allowed
plan-most-hint = The lowest limit that applies: paint, glue, plastic or wiring behind.
plan-c-wrong = A panel has −20 to 70 °C, and the paint may get 0 to 85 °C warm.
plan-glue = Glue from the front
plan-no-glue = No glue
plan-more = Maker’s rule, costs
makers-rule = A rule of the maker that forbids it
makers-rule-hint = In your words, where there is one. The plan then says no.
cost-ours = This repair
cost-conventional = Conventional repair
costs-wrong = Both costs as numbers, or neither.
plan-level = Level within your limit of { $limit }
plan-level-help = Nothing stands out beyond it; there is nothing to plan.
plan-can-yes = It can be done, as far as computed
plan-can-not_reached = Nothing computed rules it out, but the rounds foretold do not reach your limit
plan-can-no_move = Nothing computed rules it out
plan-can-push_to_paint = Near level, then texture or paint
plan-can-no = It cannot be done this way
plan-can-no-help = Conventional repair is the way. What follows is only what the metal would do.
plan-expected = After all rounds foretold { $left } ± { $doubt } are left where it is most; your limit is { $limit }.
plan-not-reached = The rounds foretold do not reach the limit. The plan is made anew after every reading and goes on from what is left; whether it gets there is not foretold.
plan-no-move = No move was found that helps: read again from closer, or work by eye.
plan-bridged = { $share } of the patch was not read and is guessed: a low too steep to read is deeper than reckoned here.
plan-misfit = The computed sheet is { $misfit } off what was read. Trust directions more than amounts.
plan-fine-tips = Too fine for this model to tell what they do: { $tips }.
plan-unreached = Nothing reaches the low { $place }: allow glue, or say no.
plan-hand = Your hand: a lift asked for comes out { $gain } ± { $gaindoubt } times as far; of it the sheet keeps { $share } ± { $sharedoubt } times what is computed.
reason-oil_can = Brought level it is an oil can: it pops at { $force }.
reason-oil_can-never = Brought level it does not stay: an oil can.
reason-stretched = Stretched: { $area } % more surface than the panel had.
reason-paint = Paint: { $strain } % strain on its face on the way back, { $risk } even when warm.
reason-access = Nothing reaches it: { $blocked }.
reason-makers_rule = The maker forbids it: { $rule }
reason-dearer = Dearer than conventional repair: { $ours } against { $conventional }.
reason-not_computed = Whether it oil-cans when level could not be computed.
reason-went_over = After the last round { $after } stand out, before it { $before }: the sheet gave way or the hand went far over. Stop; look at it anew before anything else.
blocked-off_panel = not on the panel drawn
blocked-fold = nearer than 25 mm to a folded edge
blocked-bonded = something is bonded to the panel there
blocked-no_opening = no bar that stands there passes an opening
blocked-wall = { $name } is in the way
blocked-brace = { $name } is in the way
blocked-behind = { $name } is in the way
blocked-skin = the panel’s own curve is in the way
blocked-no_fulcrum = there is nothing to lever over
behind-wiring = Wiring
behind-airbag = Airbag or tensioner
behind-glass = Glass
behind-battery = High voltage
behind-solid = Something solid
departures = Unlike common practice
departure-crowns_first = The low comes before the crown: { $planned } are left against { $trade }.
departure-crown_left = The crown of { $height } { $place } is not tapped yet: the other moves change it by { $change }.
departure-tied_together = Both of two tied dents are worked in one round, the first to { $first }: one moves by { $tie } of the other, which is reckoned with.
came-of = What came of the last moves
came-of-most = Largest left: foretold { $foretold } ± { $doubt }, found { $found }.
came-as_foretold = as foretold
came-more = more than foretold
came-less = less than foretold
came-move = foretold { $foretold } ± { $doubt }, found { $found }
learned-hand-same = Your hand does what was taken: { $after } ± { $doubt } times the lift asked for.
learned-hand-more = Your hand lifts further than was taken: { $after } ± { $doubt } times what is asked, not { $before }. The next amounts are smaller by that.
learned-hand-less = Your hand lifts less far than was taken: { $after } ± { $doubt } times what is asked, not { $before }. The next amounts are larger by that.
learned-sheet-same = The metal keeps what was computed: { $after } ± { $doubt } times.
learned-sheet-more = The metal keeps more than was computed: { $after } ± { $doubt } times, not { $before }.
learned-sheet-less = The metal springs back more than was computed: it keeps { $after } ± { $doubt } times, not { $before }.
round-now = This round
round-from-to = From { $before } to { $after } ± { $doubt }
round-proved = Every move was proved by a full computation.
round-left-out = { $count ->
    [one] One move is left out: the sheet would pop on the way, or nothing would stay.
   *[other] { $count } moves are left out: the sheet would pop on the way, or nothing would stay.
}
rounds-later = { $count ->
    [one] One round after it, foretold
   *[other] { $count } rounds after it, foretold
}
rounds-later-help = These change with the next reading.
read-again-doubt_grows = Then stop and read again: what comes next hangs on what these moves leave.
read-again-should_be_level = Then stop and read again: it should be level.
plan-act-push = Push
plan-act-pull = Pull
plan-act-tap = Tap
plan-act-blend = Blend
amount-times = { $times } × { $lift }
radius-of = radius { $radius }
hardness-soft = soft
hardness-medium = medium
hardness-hard = hard
rack-needle_3 = Fine tip
rack-ball_6 = Small ball
rack-ball_10 = Ball
rack-cap_16 = Wide cap
rack-tab_8 = Small tab
rack-tab_14 = Tab
rack-tab_22 = Wide tab
rack-head_5 = Fine head
rack-head_8 = Head
rack-head_14 = Wide soft head
rack-straight_8 = Straight bar, 8 mm
rack-straight_12 = Straight bar, 12 mm
rack-elbow_40 = Square bend, 40 mm
rack-elbow_80 = Square bend, 80 mm
rack-half_bend = Half bend
rack-hand_hook = Hand hook
rack-step_bar = Stepped bar
rack-thin_rod = Thin rod
rack-blade_25 = Flat blade, 25 mm
rack-pusher = Pusher
rack-eva = Hot glue
plan-why-large_shape = Large shape before detail: this low is { $depth } deep.
plan-why-low = A low of { $depth } is left.
plan-why-high = A high of { $height } is left.
plan-why-crown = A crown of { $height } beside a low of { $low }; by this move alone the low { $comes ->
    [up] comes up
   *[down] goes down
} by { $change }.
plan-lines-opens = The bend over the low opens.
plan-lines-flattens = The bulge over the high flattens.
held-above = { $height } above level
held-below = { $height } below level
plan-stays = While held the place stands { $stands }; let go, { $leaves } ± { $doubt } of the way stays.
plan-stop = Stop and read again once it has moved by { $height }.
plan-heat = Paint at { $warm }: { $risk }, { $strain } % strain.
with-not_drawn = From behind. What is there was not drawn: whether a bar reaches is not known.
with-knock_down = From the front.
with-tab = { $glue }: it surely holds { $sure }, perhaps { $perhaps }. Pull square.
with-bar-through = From behind with { $tool }, { $tip } on it, through { $opening } of { $wall }, { $inside } in.
with-bar-trim = { $trim } off first.
with-bar-over = Worked { $over }, { $square }° off square; it gives { $force }.
with-bar-short = It may not give the force that is wanted.
over-rim = over the opening’s padded rim, { $packing } packed
over-brace = over { $name }, { $packing } packed
over-end_on = end on
move-why = Why
move-lines = Lines
move-with = With
move-stop = Stop
move-warm = Heat
move-force = about { $force }
plan-cautions = Cautions
plan-cautions-always = The vehicle maker’s procedure, local code and licensed people come first. Nothing is promised about the paint.
plan-caution-airbag = Airbag or belt tensioner behind: disconnect and wait as its maker says; no bar near it.
plan-caution-high_voltage = High voltage behind: trained people isolate it and prove it dead; keep heat away.
plan-caution-wiring = Wiring behind: keep bars clear of it.
plan-caution-glass = Glass behind: guard it; a bar on its edge breaks it.
plan-caution-glue = Hot glue burns the skin; no heat until the solvent has gone; glue can lift weak or repainted paint.
plan-caution-tapping = Tapping: hearing and eye protection; gloves at sheet edges.
plan-caution-not_drawn = Nothing was drawn behind: look for airbags, wiring, glass and bonded braces before a bar goes in.
plan-caution-corrosion = Protect the inside from rust again after the work. Never drill; never part what is bonded or welded.
on-the-photo = On the photo
on-the-map = On the map
marks-where = Where the moves are made
marks-help = Triangle: outward. Diamond: inward. Blue is low, orange is high.
work-at = { $panel }: at work
work-leave = Leave the work
work-move = Move { $number } of { $count }
work-since = since the work began
work-this-move = this move
work-done = Done
work-undo = Undo
work-skip = Skip
work-own = Own move
work-no-plan = No plan needed: the clock, your own moves, and readings in between.
work-round-over = The round is over
work-round-over-help = Read the panel again: what comes next hangs on what these moves left.
work-made-count = { $count ->
    [0] No move noted yet
    [one] One move noted
   *[other] { $count } moves noted
}
work-read-again = Read again
work-level = It is level within the limit.
work-noted = Noted: { $what }
work-taken-back = Taken back: { $what }
work-skipped = Left out: { $what }
work-clock-start = Start the clock: { $kind }
note-move = Move noted
take-back-move = Move taken back
hands-free = Hands-free
knock = Knocks
knock-on = Two knocks on the phone or its stand, then a moment of quiet, mean “Done”. Steady tapping on the panel does not count.
knock-insecure = The browser gives no motion over this address. Open the app under its https address.
knock-none = This browser gives no motion. Use the buttons, or voice.
knock-denied = The system does not let the page feel motion. Allow it in the browser’s settings for this page.
knock-silent = This device tells no motion. Use the buttons, or voice.
voice = Voice
voice-on = Say “done”, “back” or “skip”. Some browsers send the sound to their maker to be understood.
voice-insecure = The browser hears nothing over this address. Open the app under its https address.
voice-none = This browser cannot understand speech. Use the buttons, or knocks.
voice-denied = The page may not use the microphone. Allow it in the browser’s settings for this page.
voice-failed = The browser’s speech service does not answer; without network it often cannot. Use the buttons, or knocks.
aloud = Read aloud
aloud-on = The next move is read aloud.
aloud-none = This browser cannot speak.
screen-sleeps = The browser does not keep the screen lit here: set it so in the device.
spoken-lift = lift { $mm } millimetres
spoken-lower = lower { $mm } millimetres
spoken-times = { $times } times
spoken-move = Move { $number }. { $act }, { $tip }, { $far }.
spoken-over = The round is over. Read again.
heat = Heat
heat-wanted = Warm the paint to { $warm }
heat-now = Warmed to
heat-start = Count down
heat-left = warm enough for
heat-soon = Soon too cold
heat-over = Too cold for this move: warm again
heat-stays = It does not fall below { $warm } here.
heat-falls = until it falls below { $warm }
heat-clear = Stop the countdown
heat-estimate = An estimate for still air. Measure the paint; never above the warmest allowed.
own-move = A move of your own
own-place = Touch the map where you work.
own-placed = { $place }
own-tip = Tip
own-lift = Lift
own-lower = Depth
own-times = Times
own-note = Note it
look-again = A panel may relax: read it again
look-again-short = Read again today
look-tomorrow = Look again tomorrow
look-tomorrow-help = Metal can relax overnight. The damage is then shown as due.
look-set = You are reminded on { $day }.
look-off = Not needed
to-behind = Draw what is behind
behind-of = { $panel }: what is behind
behind-draw = Draw
thing-opening = Opening
thing-hole = Round hole
thing-slot = Opening at an edge
thing-brace = Brace
thing-bonded = Bonded zone
thing-wiring = Wiring
thing-airbag = Airbag, tensioner
thing-glass = Glass
thing-battery = High voltage
thing-solid = Something solid
thing-ask = What reaches here?
thing-name = What it is
thing-trim = Trim to take off first
thing-trim-hint = Leave empty where nothing covers it.
thing-deep = Behind the skin by
thing-wide = Across
thing-bears = A bar may be levered over it
thing-remove = Remove
thing-removed = { $what }: removed
wall-inner = inner sheet
wall-top = upper edge
wall-bottom = lower edge
wall-left = left edge
wall-right = right edge
behind-drawing = { $count ->
    [0] Drawing of what is behind, empty
    [one] Drawing of what is behind, one thing
   *[other] Drawing of what is behind, { $count } things
}
behind-things = What was drawn
behind-help-box = Drag from corner to corner on the map. What is seen from outside is drawn where it lies.
behind-help-line = Drag from end to end on the map.
behind-ask-help = Touch the map: the shop’s tools are tried there.
behind-gap = From skin to inner sheet
behind-gap-hint = Measured where the damage is.
behind-edges = The panel’s edges
edge-top = Upper edge at y
edge-bottom = Lower edge at y
edge-left = Left edge at x
edge-right = Right edge at x
behind-save = Keep the drawing
behind-saved = Kept
behind-forget = Forget the drawing
behind-foreign = What is behind was drawn by other means and cannot be drawn on here. Plans go by it. Forget it to draw anew.
behind-estimate = A sketch: the skin is taken as flat, edges as closed but for the openings drawn. Feel the way before you push. Never drill; never part what is bonded or welded; airbags and high voltage as their makers say.
back-to-plan = Back to the plan
reach-title = Reaches, squarest and strongest first
reach-none = Nothing reaches here
reach-none-next = Glue from the front, or say no. Drilling is no way.
reach-looking = The tools are tried …
reach-estimate = As far as the drawing is right.
reach-through = Through { $opening } of { $wall }, { $inside } in.
reach-goes-on = Its tip goes on by { $travel }.
the-rack = The shop’s tools
the-rack-help = What hangs in your shop. Plans propose only what is here, and only what reaches.
rack-tools = Bars, hooks, blades
tool-add = Add a bar
tool-new = Bar
tool-name = Name
tool-says = What you call it
tool-drawing = Bar, { $length } along its middle
tool-draw-help = The small triangle is the tip; it pushes upward in the drawing. Drag a corner to move it; touch beside the bar to add one at the hand’s end.
tool-corner-away = Last corner away
tool-corners = Corners in numbers
tool-along = Corner { $number }, along
tool-up = Corner { $number }, toward the panel
tool-section = Section
section-round = Round
section-flat = Flat
tool-diameter = Diameter
tool-width = Width
tool-height = Thickness
tool-yield = Yields at
tool-yield-hint = Spring steel about 1100.
tool-radius = Radius
tool-hardness = Hardness
shelf-tip = Tips
shelf-tab = Tabs for glue
shelf-knock_down = Knock-downs
shelf-add-tip = Add a tip
shelf-add-tab = Add a tab
shelf-add-knock_down = Add a knock-down
shelf-new-tip = Tip
shelf-new-tab = Tab
shelf-new-knock_down = Head
rack-flaws = A name is empty or comes twice, or a bar has two corners at one place: { $names }
rack-starter = Back to the rack that comes with the program
rack-starter-done = The rack is the one that comes with the program.
rack-ground = Shapes and steels of the starter rack are common practice, no published source.

### Where the tip stands
find-tip = Where is my tip?
find-tip-how = Two photos from the same stand, of the mirrored lines with the tags: one before, one while the tip leans on lightly.
tip-before = Photo before
tip-before-taken = Photo before: taken. Another one
tip-loaded = Photo while it leans on
tip-looking = Looking for it…
tip-off = { $far } off, doubt { $doubt }
tip-stands = At x { $x }, y { $y }, doubt { $doubt }
tip-go = On the map go { $across } to the { $side ->
    [left] left
   *[right] right
  } and { $along } { $way ->
    [down] down
   *[up] up
  }.
tip-mark = tip
trouble-tip = It cannot be told where the tip stands.
