# Dentwright auf Deutsch. Die Wörter des Handwerks; jeder Text heißt in allen Sprachen gleich.

## Überall
home = Alle Aufträge
skip = Zum Inhalt
settings = Einstellungen
to-light = Heller Bildschirm, für draußen
to-dark = Dunkler Bildschirm, neben dem Blech
opening = Wird geöffnet …
again = Noch einmal
close = Schließen
undo = Zurücknehmen
save = Speichern
saved = Gespeichert
all-saved = Alles gespeichert
cancel = Abbrechen
never-mind = Doch nicht
offline = Das Programm antwortet nicht.
offline-next = Prüfen, ob es läuft und dieses Gerät im selben Netz ist. Was eingetippt wurde, bleibt hier erhalten.
app-problem-next = Die Seite neu laden. Was eingetippt wurde, bleibt auf diesem Gerät erhalten.

## Koppeln
pair = Dieses Gerät koppeln
pair-help = Der Rechner, auf dem Dentwright läuft, zeigt einen Code und ein QR-Bild. Das Bild scannen oder den Code hier eintippen. Er gilt einmal.
pair-code = Code
pair-now = Koppeln
pair-other = Weiteres Gerät
pair-other-help = Ein Telefon oder Tablet in diesem Netz wird mit einem Code zugelassen. Er gilt einmal, 15 Minuten lang.
pair-show = Code zeigen
pair-picture = QR-Bild der Adresse

## Aufträge
jobs = Aufträge
take-car-in = Auto annehmen
find = Suchen
find-hint = Kennzeichen, Name, FIN, Nummer, Wörter der Notizen
stage = Stand
all-stages = Alle
stage-taken_in = Angenommen
stage-quoted = Angeboten
stage-authorised = Beauftragt
stage-in_work = In Arbeit
stage-finished = Fertig
stage-handed_over = Übergeben
jobs-found = { $count ->
    [one] Ein Auftrag
   *[other] { $count } Aufträge
}
no-jobs = Noch kein Auto da
no-jobs-next = Das erste annehmen: Name und Kennzeichen genügen für den Anfang.
nothing-found = Nichts gefunden
nothing-found-next = Weniger Buchstaben versuchen, oder alle Stände.
unnamed-car = Auto ohne Namen
promised-on = zugesagt { $date }
damages-count = { $count ->
    [one] 1 Schaden
   *[other] { $count } Schäden
}
dents-count = { $count ->
    [0] noch keine Dellen
    [one] 1 Delle
   *[other] { $count } Dellen
}
readings-count = { $count ->
    [one] 1 Messung
   *[other] { $count } Messungen
}
photos-count = { $count ->
    [one] 1 Foto
   *[other] { $count } Fotos
}

## Kunde und Auto
take-in-hint = Der Name genügt für den Anfang. Der Rest kann warten.
to-the-damage = Zum Schaden
empty-form = Formular leeren
customer-name = Kunde
phone = Telefon
email = E-Mail
address = Anschrift
plate = Kennzeichen
make = Marke
model = Modell
vin = FIN
vin-hint = 17 Zeichen, an der Türsäule oder hinter der Frontscheibe
vin-count = { $count } von 17 Zeichen
vin-asking = Wird geprüft …
vin-good = Die Prüfziffer stimmt
vin-plain = Richtig gebildet. Außerhalb Nordamerikas gibt es keine Prüfziffer.
vin-bad = Das ist keine FIN: sie hat 17 Zeichen und nie I, O oder Q.
promised = Zugesagt für
colour = Farbe
year = Baujahr
odometer = Kilometerstand
more-fields = Mehr
paint = Lack
paint-hint = Schichtdicken, Nachlackierung, Folie
high-voltage = Elektro oder Hybrid, mehr als 60 V
not-looked = Nicht geprüft
yes = Ja
no = Nein
notes = Notizen
remove-job = Auftrag entfernen
job-removed = Auftrag { $number } entfernt
steps = Schritte des Auftrags
step-car = Auto
step-damages = Schaden
step-quote = Angebot
step-papers = Papiere

## Das gezeichnete Auto
where-is-it = Wo ist der Schaden?
car-drawing = Das Auto von oben, Seiten ausgeklappt
car-front = vorn
tap-a-panel = Erst das Blechteil antippen, dann die Stelle darauf.
rear-end = Heck
or-from-list = Oder aus der Liste
choose-panel = Blechteil wählen
place-help = Die Stelle antippen, oder die Marke mit den Pfeiltasten bewegen.
place-pad = Stelle auf dem Blechteil: { $panel }
place-is = Marke { $across } % von links und { $down } % von oben
add-damage = Hier ist der Schaden
damages = Schäden
no-damages = Noch keiner markiert.
damage-title = { $number } · { $panel }
remove-damage = Schaden entfernen: { $panel }
damage-removed = Entfernt: { $panel }
to-the-quote = Zum Angebot
panel-bonnet = Motorhaube
panel-roof = Dach
panel-boot_lid = Kofferraumdeckel
panel-tailgate = Heckklappe
panel-front_wing_left = Kotflügel links
panel-front_wing_right = Kotflügel rechts
panel-rear_wing_left = Seitenwand links
panel-rear_wing_right = Seitenwand rechts
panel-front_door_left = Tür vorn links
panel-front_door_right = Tür vorn rechts
panel-rear_door_left = Tür hinten links
panel-rear_door_right = Tür hinten rechts
panel-roof_rail_left = Dachholm links
panel-roof_rail_right = Dachholm rechts
panel-front_bumper = Stoßfänger vorn
panel-rear_bumper = Stoßfänger hinten
panel-sill_left = Schweller links
panel-sill_right = Schweller rechts
panel-fuel_flap = Tankklappe

## Schaden
back-to-car = Zurück zum Auto
way-in = Wie die Dellen hineinkommen
by-hand = Von Hand zählen
by-photos = Aus Fotos messen
count-dents = Zählen
kind = Art
kind-round = Rund
kind-hail = Hagel
kind-soft = Weich
kind-sharp = Scharf
kind-crease = Knick
kind-high = Hochpunkt
depth = Tiefe
depth-faint = Kaum
depth-shallow = Flach
depth-clear = Deutlich
depth-deep = Tief
place = Lage
place-flat = Fläche
place-body_line = Auf der Sicke
place-edge = Nahe der Kante
place-rail = Auf dem Holm
access = Zugang
access-open = Offen
access-trim_off = Verkleidung ab
access-braced = Hinter Strebe
access-glue_only = Nur Kleben
access-none = Keiner bekannt
metal = Blech
metal-steel = Stahl
metal-high_strength_steel = Hochfester Stahl
metal-aluminium = Aluminium
size = Größe
gauge-circles = Kreise
gauge-coins = Münzen
gauge-typed = Eintippen
tap-to-count = Einmal tippen, eine Delle.
count-size = Eine zählen von { $size }
across = Breite
along = Länge
along-hint = Wenn sie lang ist
deep-hint = Sonst { $depth }
count-this = Zählen
number-over-zero = Eine Zahl über null
number-wanted = Hier gehört eine Zahl hin
dents = Dellen auf diesem Teil
no-dents = Noch nichts gezählt. Eine Größe antippen.
from-reading = aus einer Messung
one-fewer = Eine weniger: { $dent }
one-more = Eine mehr: { $dent }
remove-dent = Entfernen: { $dent }
notes-and-photos = Notiz und Fotos
note = Notiz
add-photos = Fotos hinzufügen
photo-number = Foto { $number } dieses Schadens

## Messung
readings = Messungen
open-map = Karte vom { $when }
upload-capture = Fotos gespiegelter Linien
upload-help = Alle Fotos einer Aufnahme zusammen, mit ihrer capture.toml. Oder der Ordner als eine ZIP-Datei.
upload-drop = Der Ordner kann auch hierher gezogen werden.
choose-photos = Fotos wählen
too-large = Diese Dateien haben zusammen { $size } MB.
too-large-next = Höchstens 400 MB auf einmal. Nur die Fotos dieser Aufnahme wählen.
being-read = Das Blech wird gemessen
read-cancelled = Angehalten. Die Fotos bleiben erhalten.
reading-stage-sending = Senden
reading-stage-photos = Fotos öffnen
reading-stage-tags = Marken suchen
reading-stage-lines = Linien verfolgen
reading-stage-poses = Standort von Kamera und Tafel
reading-stage-shape = Form des Blechs
reading-stage-spots = Tief- und Hochpunkte
back-to-damage = Zurück zum Schaden
map-of = Karte: { $panel }
map = Karte der Tief- und Hochpunkte
map-keys = Tasten: Pfeile bewegen die Marke, Umschalt feiner; + und − vergrößern, 0 zeigt alles; N und P gehen durch die Stellen; C beginnt einen Schnitt.
touch-the-map = Karte berühren
not-read = Hier nicht gemessen
low = Tief
high = Hoch
within-limit = innerhalb der Grenze
zoom-in = Näher
zoom-out = Weiter weg
whole-map = Ganze Karte
tools = Was der Finger tut
tool-value = Wert
tool-move = Schieben
tool-cut = Schnitt
tool-help-value = Ein Finger zeigt den Wert mit seinem Zweifel (2σ), zwei Finger schieben und vergrößern.
tool-help-move = Karte ziehen. Zwei Finger vergrößern.
tool-help-cut = Eine Linie über die Karte ziehen, um ihr Profil zu sehen.
scale = Farbskala
finer = Feinere Skala
coarser = Gröbere Skala
as-intended = wie gewollt
limit-is = Grenze { $limit }
cut = Schnitt
cut-unread = Entlang dieser Linie wurde nichts gemessen.
cut-words = { $length } lang; tiefste Stelle { $deepest }, höchste { $tallest }. Das Band ist ±2σ, der grüne Streifen die Grenze.
spots = { $count ->
    [0] Keine Stellen
    [one] Eine Stelle
   *[other] { $count } Stellen, tiefste zuerst
}
no-spots = Kein Tief- oder Hochpunkt ragt aus dem Zweifel heraus.
panel-photo = Das Blech, wie die Kamera es sah
photo-help = Die Stellen auf dem Foto.
verdict-done = Fertig
verdict-not-done = Noch nicht fertig
verdict-cannot-tell = Nicht zu sagen
verdict-words = { $verdict ->
    [done] Nichts Gemessenes weicht mehr ab als die Grenze von { $limit }.
    [not-done] { $lows ->
        [0] {""}
        [one] Eine Stelle ist tiefer als die Grenze von { $limit }.
       *[other] { $lows } Stellen sind tiefer als die Grenze von { $limit }.
    } { $highs ->
        [0] {""}
        [one] Eine Stelle ist höher als { $limit }.
       *[other] { $highs } Stellen sind höher als { $limit }.
    }
   *[cannot-tell] Der Zweifel ist zu groß für eine Grenze von { $limit }, oder es wurde zu wenig gemessen.
}
limit-words = Deine Grenze: { $depth } und { $slope } mrad, ohne Struktur unter { $scale }.
chance-within = Wahrscheinlichkeit, dass alles Gelesene darin liegt: { $chance }.
may-be-over = zu { $chance } über der Grenze
settle-less_doubt = Das würde es klären: eine Messung mit ± { $needed } dort statt ± { $now }. Tafel näher heran, länger belichten oder mehr Schritte.
settle-at_the_limit = Es liegt an der Grenze: keine Messung klärt das. Noch einmal bearbeiten oder als nicht fertig nehmen.
settle-read_the_rest = Eine Stelle darin wurde nicht gelesen. Erst lesen, dann fertig nennen.
settle-closer = Eine Stelle ist zu steil zum Lesen: Tafel näher heran.
read-part = { $part } des Blechs im Bild wurden gemessen.
scale-absolute = Höhen sind absolut.
scale-relative = Höhen sind nur relativ: der Maßstab ist nicht bekannt.
take-spots = { $count ->
    [one] Die Stelle ins Angebot übernehmen
   *[other] { $count } Stellen ins Angebot übernehmen
}
spots-taken = { $count ->
    [0] Nichts zu übernehmen: alles innerhalb der Grenze
    [one] Eine Delle übernommen
   *[other] { $count } Dellen übernommen
}
not-read-why = Nicht gemessen, und warum
not-read-help = Auf der Karte schraffiert. Einen Grund antippen, um zu sehen, wo.
unread-not_mirrored-what = Hier spiegelt sich die Tafel nicht
unread-not_mirrored-next = Um auch das zu messen: Tafel oder Telefon bewegen, bis die Linien es bedecken.
unread-tag-what = Unter einer Marke
unread-tag-next = Nichts zu tun, außer darunter ist Schaden: dann die Marke versetzen.
unread-clipped-what = Zu hell
unread-clipped-next = Die Fotos kürzer belichten.
unread-low_contrast-what = Linien zu schwach
unread-low_contrast-next = Raum abdunkeln, Blech reinigen oder länger belichten.
unread-folded-what = Das Spiegelbild klappt um
unread-folded-next = Zu tief für diesen Abstand: die Tafel näher heranbringen oder eine gemessene Tiefe eintragen.
unread-not_followed-what = Die Linien lassen sich in einem Foto nicht verfolgen
unread-not_followed-next = Die Tafel für eine volle Messung verschieben oder näher heranbringen.
unread-inconsistent-what = Die Fotos widersprechen sich hier
unread-inconsistent-next = Suchen, was sich bewegt hat, und die Fotos noch einmal machen.
unread-gauged-what = Nach einer gemessenen Tiefe ergänzt
unread-gauged-next = Die glatteste Form, die zu ihr passt. Zum Lesen die Tafel näher heranbringen.
too-steep-to-read = Hier zu steil zum Lesen
at-least = mindestens
at-least-low = Tiefe von mindestens { $depth }
at-least-high = Höhe von mindestens { $depth }
low-or-high-not-told = Tief oder hoch: der Rand sagt es nicht
middle-too-steep = die Mitte, { $across } breit, war zu steil zum Lesen
place-too-steep = { $across } breit, zu steil zum Lesen. Die Tafel näher heranbringen oder die Tiefe messen.
deeper-than-priced = vielleicht tiefer als gerechnet
gauge-depths = Tiefen von der Messuhr
gauge-add = Gemessene Tiefe eintragen
gauge-tap = Auf der Karte antippen, wo die Spitze der Messuhr stand.
gauge-place = Bei { $x }, { $y } mm. Auf die Karte tippen, um es zu verschieben.
gauge-how = An der tiefsten Stelle messen, gegen das heile Blech ringsum: mit Lineal und Fühllehre oder mit einer Messuhr, die neben der Delle auf null steht. Das ergänzt, was zu steil zum Lesen war.
gauge-way = Tief oder hoch
gauge-depth = Tiefe oder Höhe
gauge-more = Unsicherheit, und Messuhr auf Füßen
gauge-doubt = Unsicherheit, plus oder minus
gauge-doubt-hint = Eine Messuhr in der Hand: 0,05 mm.
gauge-feet = Füße der Messuhr
gauge-feet-none = Keine
gauge-feet-beside = Links und rechts
gauge-feet-above = Oben und unten
gauge-span = Abstand der Füße
gauge-span-hint = Auf einer ebenen Platte auf null stellen: die Wölbung des Blechs rechnet die Karte heraus.
gauge-join = In die Karte übernehmen
gauge-added = Tiefe in die Karte übernommen
gauge-take-back = Zurücknehmen
gauge-filled = { $across } breit ergänzt, als glatteste Form, die zu ihr passt. Stellen und Urteil rechnen damit.
gauge-agrees = Die Karte hat dort { $map } ± { $doubt }: beides stimmt überein.
gauge-near = Die Karte hat dort { $map } ± { $doubt }: etwas weiter auseinander als die Unsicherheit.
gauge-disagrees = Die Karte hat dort { $map } ± { $doubt }: das widerspricht sich. Größe der Marken und der Tafel, die Null der Uhr und den Ort prüfen.
number-above-zero = Eine Zahl über null
quote-at-least = { $count ->
    [one] Eine Delle war zum Teil zu steil zum Lesen: sie ist mit der Tiefe gerechnet, die sie sicher hat, und vielleicht tiefer.
   *[other] { $count } Dellen waren zum Teil zu steil zum Lesen: sie sind mit der Tiefe gerechnet, die sie sicher haben, und vielleicht tiefer.
}
about-this-reading = Über diese Messung

## Vorher und nachher
before-and-after = Vorher und nachher
before = Vorher
after = Jetzt
change = Änderung
what-is-shown = Was die Karte zeigt
came-up = kam hoch
went-down = ging runter
unchanged = unverändert
comparing = Die Messungen werden aufeinandergelegt …
moved = Bewegtes Blech
moved-up = Nach oben
moved-down = Nach unten
left-before = Schaden vorher
left-after = Schaden jetzt
nothing-changed = Nichts hat sich über den Zweifel der beiden Messungen hinaus geändert.
worked = { $count ->
    [one] Eine Stelle hat sich geändert
   *[other] { $count } Stellen haben sich geändert, die stärkste zuerst
}
way-better = besser
way-worse = schlechter
from-to = { $before } → { $after }
laid-by-tags = { $moved ->
    [0] Aufeinandergelegt nach { $count } Marken, die geblieben sind, auf ± { $within }.
   *[other] Aufeinandergelegt nach { $count } Marken, die geblieben sind, auf ± { $within }; { $moved } kleben jetzt woanders.
}
laid-by-shape = Die Marken wurden ersetzt: aufeinandergelegt nach der Struktur des Lacks, { $likeness } gleich, auf ± { $within }.
not-laid = Nicht auf die letzte gelegt
series = Die Instandsetzung, Messung für Messung
map-of-reading = Karte der Messung { $number }
what-was-left = Was übrig war, mm³
left-words = Von { $first } mm³ auf { $last } mm³ an Tiefen und Höhen. Striche sind ±2σ.

## Struktur
texture = Struktur
texture-matches = Keine Stelle weicht vom übrigen Blech ab.
mark-rougher = Rauer als das Blech: { $times }-mal, { $area } mm². Ein Werkzeug kann es gezeichnet haben.
mark-smoother = Glatter als das Blech: { $times }-mal, { $area } mm². Es kann poliert sein.
texture-by-scale = Nach Wellenlänge
texture-bar = Anteil
waves = Wellen
too-fine = zu fein zum Sehen
texture-ground = Vom gesunden Blech, ohne Dellen; Kenngrößen nach ISO 25178-2 für Wellen unter { $longest }. Im feinsten Band steckt auch das eigene Rauschen der Messung.

## Sicke
follow-line = Entlang dieses Schnitts läuft eine Sicke
body-line = Sicke
line-height = Höhe der Sicke
line-sideways = Seitlich
line-sharpness = Schärfe
most = am meisten { $value }
line-ground = Gegen den eigenen Verlauf der Sicke im gesunden Blech; Schärfe 1 ist wie der Rest. Bänder sind ±2σ.

## Eine Messung mitnehmen
take-along = Mitnehmen
form-zip = die ganze Messung, für ein anderes Dentwright
form-png = die Karte als Bild
form-svg = die Karte als Zeichnung, im Maßstab
form-ply = die Oberfläche, mit Abweichung und Zweifel
form-stl = die Oberfläche als Dreiecke
form-x3p = Höhen, ISO 25178-72
form-csv = eine Tabelle, eine Zeile je Stelle
open-packed = Gepackte Messung öffnen (zip)

## Vorsicht
cautions = Vorsicht
caution-airbag_curtain-title = Kopfairbag
caution-airbag_curtain = Kopfairbags liegen an den Dachholmen hinter dem Himmel. Bevor dort Verkleidung abgenommen wird oder ein Werkzeug hineingeht: abklemmen und warten, wie der Fahrzeughersteller es vorgibt.
caution-airbag_seat_pillar-title = Airbags und Gurtstraffer
caution-airbag_seat_pillar = In Sitzen und Säulen sitzen Airbags und Gurtstraffer. Vor Arbeiten daran abklemmen und warten, wie der Fahrzeughersteller es vorgibt; Werkzeug und Wärme fernhalten.
caution-high_voltage-title = Hochvolt
caution-high_voltage = Dieses Fahrzeug führt mehr als 60 V Gleichspannung. Nur Fachkundige schalten frei und stellen die Spannungsfreiheit fest. Wärme und Werkzeug von der Batterie und von orangefarbenen Leitungen fernhalten.
caution-voltage_unknown-title = Hochvolt nicht bekannt
caution-voltage_unknown = Noch ist nicht vermerkt, ob dieses Fahrzeug mehr als 60 V Gleichspannung führt. Erst in die Papiere und unter die Haube sehen; führt es sie, schalten nur Fachkundige frei und stellen die Spannungsfreiheit fest.
caution-gas_strut-title = Gasdruckdämpfer
caution-gas_strut = Gasdruckdämpfer stehen unter Druck. Die Klappe abstützen, bevor ein Dämpfer abgenommen wird, und nie einen Dämpfer erwärmen.
caution-solvent-title = Lösemittel
caution-solvent = Reinigungsalkohol entzündet sich leicht: Isopropanol gibt ab 12 °C brennbare Dämpfe ab. Keine Wärme und kein Funke, bis er verflogen ist; lüften.
caution-hot_glue-title = Heißkleber
caution-hot_glue = Heißkleber verbrennt die Haut. Er kann auch schwachen oder überlackierten Lack abheben: zuerst den Lack ansehen.
caution-noise-title = Lärm
caution-noise = Hämmern auf Blech erreicht etwa 93 dB(A). Gehörschutz tragen.
caution-eyes_hands-title = Augen und Hände
caution-eyes_hands = Schutzbrille tragen, an Blechkanten Handschuhe.
caution-radar_camera-title = Radar und Kameras
caution-radar_camera = Radar und Kameras sitzen hinter Stoßfängern, in Spiegeln und Klappen. Nach Aus- und Einbau kann eine Kalibrierung fällig sein: Vorgabe des Fahrzeugherstellers nachsehen.
caution-bonded_structure-title = Geklebte und geschweißte Struktur
caution-bonded_structure = Geklebte oder geschweißte Struktur wird für den Zugang nie gelöst.
caution-corrosion-title = Korrosionsschutz
caution-corrosion = Nach der Arbeit den Korrosionsschutz hinter dem Blech wiederherstellen und jede Öffnung mit ihrem Stopfen schließen.
caution-heat_paint-title = Wärme und Lack
caution-heat_paint = Lack nur bis zur niedrigsten Grenze erwärmen, die für ihn, das Blech und das Dahinterliegende gilt. Für den Lack kann nichts versprochen werden: er kann reißen, vor allem, wo überlackiert wurde.

## Angebot
gross-with-tax = Preis mit Steuer
hours-on-dents = Stunden an den Dellen
low-guess = wenig
high-guess = viel
span-words = { $label }: wahrscheinlich { $likely }, zwischen { $low } und { $high }
span-ground = Jedes zehnte Mal weniger, jedes zehnte Mal mehr. Das sagt ein Modell; die eigene Uhr weiß es besser.
lines = Posten
no-lines = Noch nichts zu berechnen. Dellen zählen oder die Stellen einer Messung übernehmen.
what = Was
quantity = Menge
unit-price = Je
amount = Betrag
net = Netto
tax-of = Steuer { $percent } %
gross = Gesamt
line-dent = Dellen
line-remove_install = Aus- und Einbau
line-part = Teil
line-sundry = Kleines
line-uplift = Zuschlag
line-discount = Nachlass
rate-and-tax = Satz und Steuer
hourly-rate = Stundensatz
tax = Steuer
ri-lines = Aus- und Einbau
add-ri = Ausbau hinzufügen
hours = Stunden
uplifts = Zuschläge
add-uplift = Zuschlag hinzufügen
on-dents = auf Dellen
on-labour = auf Arbeit
on-all = auf alles
stacking = Mehrere Zuschläge
stack-add = zusammenzählen
stack-compound = aufeinander
parts-and-sundries = Teile und Kleines
add-sundry = Teil oder Kleines hinzufügen
counted-in = Gezählt in
line-removed = Entfernt: { $what }
remove-line = Entfernen: { $what }
discount = Nachlass
take-off = Abziehen
discount-in = in
what-drove = Woher die Stunden kommen
factor-area = Fläche
factor-depth = Tiefe
factor-sharpness = Schärfe
factor-kind = Art
factor-metal = Blech
factor-access = Zugang
factor-place = Lage
factor-count = Anzahl
as-compared = wie die Vergleichsdelle
to-the-papers = Zu den Papieren

## Papiere
report = Bericht
report-holds = Auto, Schaden, Fotos, Karte mit Maßstab, Dellen, Fertigbefund, Angebot, Vorsicht und wie gemessen wurde.
report-stays = Er entsteht auf diesem Rechner und wird nirgendwohin gesendet.
report-being-made = Wird gemacht …
download-report = Bericht herunterladen
report-ready = Der Bericht ist gespeichert

## Einstellungen
on-the-screen = Auf dem Bildschirm
language = Sprache
lengths = Längen
temperatures = Temperaturen
finish = Fertig
finish-limit = Fertig heißt innerhalb
finish-limit-hint = Was tiefer oder höher ist, ist noch Arbeit.
finish-slope = Steilste, die fertig ist
finish-slope-hint = µm je mm. Sie biegt die gespiegelten Linien.
finish-scale = Struktur ist kürzer als
finish-scale-hint = Kürzere Wellen werden nicht beurteilt.
finish-ground = Mitgeliefert: 10 µm, 1 mrad, 5 mm. Auf Armlänge verschiebt 1 mrad eine gespiegelte Linie um 1,2 mm, etwa ab da sieht es ein Auge; übliche Praxis, keine veröffentlichte Quelle.
price = Preis
currency = Währung
on-the-papers = Auf den Papieren
shop-name = Betrieb
tax-id = Steuernummer
coefficients = Wovon Stunden abhängen
coefficients-ground = Diese Zahlen sind übliche Praxis ohne veröffentlichte Quelle. Nach eigener gestoppter Arbeit einstellen.
hours-formula = Die Formel
hours-formula-text = Stunden = Grundwert × (Fläche ÷ Bezug) ^ Potenz × ((1 + Tiefe ÷ Bezug) ÷ 2) ^ Potenz × ((1 + Schärfe ÷ Bezug) ÷ 2) ^ Potenz × Art × Blech × Zugang × Lage × Anzahl ^ Potenz
hours-base_hours = Grundwert, h
hours-base_hours-hint = Die Vergleichsdelle: rund, 25 mm, 1 mm tief, Fläche, Stahl, offen
hours-area_ref_mm2 = Bezug der Fläche, mm²
hours-depth_ref_mm = Bezug der Tiefe, mm
hours-sharpness_ref = Bezug der Schärfe
hours-sharpness_ref-hint = Tiefe durch halbe Breite
hours-area_power = Potenz der Fläche
hours-depth_power = Potenz der Tiefe
hours-sharpness_power = Potenz der Schärfe
hours-sharpness_power-hint = Höchstens die Potenz der Fläche
hours-count_power = Potenz der Anzahl
hours-count_power-hint = Unter 1 kosten viele gleiche je weniger
hours-spread_own = Streuung einer Delle
hours-spread_shared = Streuung des ganzen Autos
hours-spread_z = Streuungen bis wenig und viel
hours-spread_z-hint = 1,2816 für jedes zehnte Mal

## Drucken
for-reading = Zum Messen
print = Marken und Tafeln drucken
print-what = Was
print-stickers = Marken fürs Blech
print-stickers-help = Zwanzig Marken zum Ausschneiden. Vier bis acht flach auf heilen Lack um den Schaden kleben, nie darauf.
print-corners = Marken für eine Tafel
print-corners-help = Vier Marken für die Ecken der eigenen Tafel.
print-lines = Linientafel
print-lines-help = Bogen mit schwarzen und weißen Linien zum Zusammenkleben, mit Plan und Beschreibung der Tafel.
print-camera = Kamerabogen
print-camera-help = Marken, die je Telefon einmal fotografiert werden, damit sein Objektiv bekannt ist.
print-tag-size = Seite des schwarzen Quadrats
print-pitch = Teilung
print-pitch-hint = Eine schwarze und eine weiße Linie zusammen
print-across = Bogen nebeneinander
print-down = Bogen übereinander
print-paper = Papier
print-scale = Mit 100 % drucken, nie an die Seite angepasst, und vor Gebrauch die beiden Lineale auf dem Bogen messen.
print-make = PDF machen

## Messen am Bildschirm
live = Messen am Bildschirm
live-help = Ein Fernseher, Monitor oder Tablet wird zur Tafel, ein Telefon auf dem Stativ zur Kamera. Der Bildschirm zeigt seine Muster nacheinander, das Telefon nimmt jedes auf: 26 Fotos im Ganzen.
live-begin = Anfangen
live-end = Beenden
live-step-board = 1 · Der Bildschirm
live-step-camera = 2 · Die Kamera
live-board-help = Auf dem Bildschirm, der sich spiegeln soll, diese Adresse öffnen. Er muss im selben Netz sein.
live-board-here = Diesen Bildschirm nehmen
live-board-known = Der Bildschirm ist bereit
live-board-unknown = Warte auf den Bildschirm …
live-camera-help = Mit dem Telefon scannen.
live-camera-here = Die Kamera dieses Geräts nehmen
live-camera-closed = Telefone kommen herein, wenn Dentwright mit --lan gestartet ist. An diesem Rechner geht seine eigene Kamera.
live-warning = Das Telefon warnt vor dem Zertifikat
live-warning-help = Die Verbindung ist verschlüsselt; für sie bürgt die eigene Stelle dieses Betriebs, die das Telefon nicht kennt. Die Warnung einmal annehmen (Details, dann Seite besuchen) oder diese Adresse am Telefon öffnen und der Stelle in dessen Einstellungen vertrauen.
live-board = Was die Tafel zeigt
live-how-large = Wie groß ist dieser Bildschirm?
live-by-card = Mit Bankkarte
live-by-tape = Mit Maßband
live-card-help = Eine Bankkarte flach an den Bildschirm halten und den Rahmen genau so groß machen wie die Karte.
live-tape-help = Die Breite der hellen Fläche auf den Millimeter messen. Alle Tiefen hängen daran.
live-card-size = Größe des Rahmens
live-smaller = Kleiner
live-larger = Größer
live-measure-anew = Neu messen
live-lit-width = Breite der hellen Fläche
live-board-ready = Tafel zeigen
live-camera = Kamera
live-wait-for-board = Warte auf den Bildschirm. Dort die Adresse öffnen und sagen, wie groß er ist.
live-open-help = Das Bild bleibt in diesem Netz. Das Licht bleibt aus.
live-open-camera = Kamera öffnen
live-setup-help = Foto der Aufstellung, aus der Hand: so zur Seite stellen, dass der ganze Bildschirm und alle Marken auf dem Blech scharf im Bild sind.
live-take-setup = Aufstellung aufnehmen
live-panel-help = Jetzt das Telefon so aufs Stativ, dass das Spiegelbild des Bildschirms den Schaden deckt. Zum Scharfstellen aufs Blech tippen. Dann nichts mehr berühren.
live-run = Reihe starten
live-setup-again = Aufstellung noch einmal
live-panel-again = Noch einmal ab dem Foto des Blechs
live-go-on = Weiter
live-stopped = Die Reihe steht.
live-do-not-touch = Telefon und Bildschirm nicht berühren.
live-turn = { $turn } von { $turns } Fotos
live-done = Alle Fotos sind gemacht. Das Blech wird gemessen.
live-locked = Festgehalten: { $what }
live-lock-exposure = Belichtung
live-lock-focus = Schärfe
live-lock-white-balance = Weißabgleich
live-insecure = Der Browser gibt seine Kamera nur verschlüsselten Seiten.
live-insecure-next = Die verschlüsselte Adresse aus dem QR-Bild öffnen oder die Kamera des Rechners nehmen.
live-no-camera = Die Kamera lässt sich nicht öffnen.
live-no-camera-next = Der Seite die Kamera erlauben und andere Programme schließen, die sie benutzen.

## Der Spiegel
mirror = Noch einmal ansehen
mirror-back = Zurück zur Karte
mirror-picture = Das gemessene Blech unter einer Tafel. Die Pfeiltasten bewegen das Gewählte; Plus und Minus holen es näher oder weiter weg.
mirror-no-graphics = Dieser Browser zeichnet keine 3-D-Grafik (WebGL 2). Einen neueren nehmen.
mirror-too-old = Diese Messung sagt nicht, wo Kamera und Tafel standen. Ihre Fotos noch einmal messen, um sie hier zu sehen.
mirror-which = Welche Messung
mirror-moves = Ein Finger bewegt
mirror-lines = die Linien
mirror-board = die Tafel
mirror-eye = das Auge
mirror-turn = Linien gedreht
mirror-away = Tafel weiter weg
mirror-times = Abweichung übertrieben
mirror-as-photographed = Wie aufgenommen
mirror-compare = Neben die Messung vom { $when }
mirror-no-common-tags = Die beiden Messungen haben weniger als zwei Marken gemeinsam und lassen sich nicht aufeinanderlegen.
mirror-help = Die Linien spiegeln sich, wie die gemessene Form sie spiegeln würde. Wo nicht gemessen wurde, ist nichts gezeichnet. Zwei Finger oder das Rad holen Tafel oder Auge näher.

## Kameras
cameras = Telefone und ihre Objektive
cameras-help = Ein Telefon, dessen Objektiv bekannt ist, misst besser. Einmal je Telefon und Zoom genügt; noch einmal nach einer Reparatur oder einem Sturz.
cameras-step-print = Den Kamerabogen mit 100 % drucken und auf etwas Ebenes kleben.
cameras-step-shoot = Sechs bis zwölf Fotos machen, die er ausfüllt: gerade, um 20 bis 40 Grad nach allen vier Seiten gekippt, einige mit um ein Viertel gedrehtem Telefon. Ein Zoom, scharf, gleichmäßig beleuchtet.
cameras-step-send = Sie schicken, wie das Telefon sie gespeichert hat.
cameras-choose = Fotos wählen
cameras-sending = Sende … { $percent } %
cameras-working = Das Objektiv wird bestimmt …
cameras-age = { $days ->
    [0] heute kalibriert
    [one] gestern kalibriert
   *[other] vor { $days } Tagen kalibriert
}
cameras-found = Brennweite { $focal } ± { $doubt } px (2σ); Ecken passen auf { $left } px
cameras-remove = Kalibrierung von { $phone } vergessen
cameras-none = Noch kein Telefon ist kalibriert.

### Wege zum Preis, Stunden, die lernen
way = Wie die Dellen berechnet werden
way-hours = Nach Stunden
way-size_classes = Nach Größe
way-hail_table = Hageltabelle
way-day_rate = Nach Tagen
way-incomplete = Hier fehlt noch etwas; das Angebot bleibt, wie es war.
size-up-to = Durchmesser bis
any-larger = jede größere
each-dent = Jede Delle
size-class = Größe { $number }
add-class = Größe hinzufügen
classes-ground = Eine Delle zählt als die kleinste Größe, in der sie ganz liegt. Die letzte Größe für alle größeren leer lassen.
hail-table = Eigene Tabelle
table-choose = Tabelle wählen
table-earlier = Eine Tabelle, die nicht mehr angeboten wird
table-remove = Diese Tabelle nicht mehr anbieten
table-import = Tabelle einlesen
table-form = Eine CSV-Datei aus einer Tabellenkalkulation: eine Zeile je Blech und Anzahl der Dellen, eine Spalte je Größe. * steht für alle anderen Bleche.
table-per = Ein Preis gilt für
per-panel = das ganze Blech
per-dent = jede Delle
table-choose-file = CSV-Datei wählen
table-ends = nicht in der Tabelle
oversize-each = Dazu für jede größere Delle
oversize-hint = Für Dellen, die größer sind als die letzte Größe der Tabelle
oversize-count = { $count } größer als alle Größen
line-oversize = größer als die Größen der Tabelle
day-rate = Ein Tag
day-hours = Stunden am Tag
way-days = Tage
way-days-hint = Leer lassen für die wahrscheinlichen Stunden, auf halbe Tage aufgerundet
days-of = { $days } T
size-rule = Größe einer Delle
rule-gauge = Jede die eigene
rule-majority = Wie die meisten am Blech
both-rules = Beide Größenregeln
rules-panel = Blech
rules-ground = Versicherer sind verschieden: jede Delle nach dem Kreis, in dem sie ganz liegt, oder das ganze Blech nach der Größe der meisten. Vor der Arbeit auf eine einigen.
beside = Daneben
stacked-otherwise = Gesamt, wenn Zuschläge { $way }
share-technician = Anteil des Drückers
share-shop = Anteil des Betriebs
share-on = Geteilt
conventional-net = Herkömmliche Reparatur, ohne Steuer
cheaper-by = Dieses Angebot ist günstiger um
dearer-by = Dieses Angebot ist teurer um
conditions = Lack und Temperatur
paint-is = Lack
paint-factory = in Ordnung
paint-old = alt, spröde
paint-repainted = überlackiert
panel-temperature = Temperatur des Blechs
panel-temperature-hint = Leer lassen, wenn niemand gemessen hat
more-pricing = Anteil, Vergleich, Steuer
goods-tax = Steuer auf Teile
goods-tax-hint = Nur, wo sie anders ist als auf Arbeit
tax-rounding = Steuer wird gerundet
round-invoice = einmal, auf die Summe
round-line = auf jeden Posten
factor-paint = Lack
factor-cold = Kälte
doubt-of = Woher die Unsicherheit kommt: { $shop }, weil die Zeiten dieses Betriebs noch nicht bekannt sind, { $day } vom Tag, { $dents } von den Dellen selbst.
worked-time = Gearbeitete Zeit
worked-whole = Ganzer Auftrag
worked-by-panel = Blech für Blech
worked-hours = An den Dellen gearbeitet
worked-hint = Ohne Aus- und Einbau
worked-save = Daraus lernen
worked-ground = Jeder Auftrag mit seiner Zeit rückt die Stunden von der üblichen Praxis zur eigenen.
worked-learned = Gelernt aus { $hours }
worked-said = Gearbeitet: { $worked }. Vorhergesagt: { $middle }, zwischen { $low } und { $high }.
worked-odd = Weit weg von allem Erwarteten. Die Zeit prüfen, bevor daraus gelernt wird.
worked-forget = Zeit zurücknehmen
foretold = Wie gut Stunden vorhergesagt wurden
foretold-none = Noch hat kein fertiger Auftrag seine gearbeitete Zeit. Bis dahin sind die Stunden übliche Praxis.
foretold-inside = { $inside } von { $jobs } Aufträgen lagen zwischen wenig und viel: { $percent }. 80 % ist richtig; bei so wenigen Aufträgen ist { $low } bis { $high } Zufall.
foretold-miss = Die Hälfte verfehlte die Mitte um weniger als das { $miss }-Fache. Im Schnitt dauerte die Arbeit das { $lean }-Fache der Mitte.
foretold-plot = Darunter vorhergesagt, und so gekommen: { $points }
foretold-caption = Quer: der Anteil der Aufträge, der darunter vorhergesagt war. Hoch: der Anteil, der darunter lag. Auf der gestrichelten Linie stimmt die Unsicherheit. Jeder Auftrag wurde vorhergesagt, bevor aus ihm gelernt wurde.
foretold-moved = Was { $jobs } Aufträge am meisten geändert haben
foretold-start = zuerst
foretold-now = jetzt
foretold-between = 8 von 10
hours-cold_times = Faktor je 10 °C zu kalt
hours-cold_under_c = Warm genug ab, °C
width = Wie weit es daneben liegen darf
width-base = Grundwert
width-power = Potenzen
width-count_power = Potenz der Anzahl
width-kind = Art
width-metal = Blech
width-access = Zugang
width-place = Lage
width-paint = Lack
width-cold = Kälte
width-spread_weight = Gestoppte Dellen, die die Streuungen wert sind

### Das Blech
to-the-metal = Was das Blech hält
back-to-map = Zurück zur Karte
metal-of = { $panel }: was das Blech hält
metal-ask = Aus der gemessenen Form wird berechnet, wie weit das Blech gestreckt ist, wo es unter Spannung steht und ob es knackfroscht. Das dauert etwa eine Minute; alles ist eine Schätzung.
metal-spot = Tief- oder Hochstelle
metal-kind = Blech
thickness = Dicke des Blechs
thickness-hint = Leer lassen, wenn nicht gemessen: dann gelten { $low } bis { $high } mm.
thickness-wrong = 0,3 bis 3 mm
metal-work-out = Berechnen
metal-again = Mit anderem Blech berechnen
metal-worked-out = Wird berechnet
metal-map = Karte dessen, was das Blech hält
layer = Ebene
layer-stretch = Streckung
layer-tension = Spannung
layer-bent_outer = Biegung außen
layer-bent_inner = Biegung innen
tension-signs = Orange ist gezogen, Blau gestaucht; die Striche zeigen die Richtung.
metal-holds = Das Blech
stretched = Höchstens etwa { $value } gestreckt, Zweifel { $doubt }.
bent = Oberflächen bleibend gebogen um bis zu { $value }, Zweifel { $doubt }.
pulled = Gezogen mit bis zu { $value } MPa, Zweifel { $doubt } MPa.
pressed-together = Gestaucht mit bis zu { $value } MPa, Zweifel { $doubt } MPa.
at-place = bei x { $x }, y { $y }
metal-held = Das Blech ist höchstens zu { $share } so weit gebogen, dass es so bliebe: losgelassen federte es von selbst zurück. Etwas ringsum hält es in dieser Form: eine Hochstelle oder einen Knick suchen und zuerst bearbeiten. Hält es eine Kante oder eine verklebte Strebe, bleibt die, wie sie ist.
crown-holds = Diese Hochstelle hält die Tiefstelle daneben: zuerst lösen.
oil-can-now-unknown = Ob es jetzt knackfroscht, ließ sich nicht berechnen.
oil-can-now-unstable = So wie es ist, bleibt das Blech nicht stehen: es springt um.
oil-can-now-pops-stays = So wie es ist, springt es bei etwa { $force } (Zweifel { $doubt }) nach { $travel } um und bleibt in der anderen Form.
oil-can-now-pops = So wie es ist, gibt es bei etwa { $force } (Zweifel { $doubt }) nach { $travel } nach und kommt zurück.
oil-can-now-calm = So wie es ist, knackfroscht es nicht.
oil-can-level-unknown = Ob es eben gebracht knackfroschen würde, ließ sich nicht berechnen.
oil-can-level-unstable = Eben gebracht würde es knackfroschen: es ist zu viel Fläche da.
oil-can-level-pops-stays = Eben gebracht würde es knackfroschen: es springt bei etwa { $force } (Zweifel { $doubt }) nach { $travel } um und bleibt.
oil-can-level-pops = Eben gebracht wäre es weich: es gibt bei etwa { $force } (Zweifel { $doubt }) nach { $travel } nach und kommt zurück.
oil-can-level-calm = Eben gebracht würde es nicht knackfroschen.
metal-taken = Angenommen: { $metal }, { $low } bis { $high } mm dick.
metal-misfit = Die berechnete Form weicht { $misfit } von der gemessenen ab.
quick-off = Eine schnelle Antwort auf einen Druck lag hier { $off } neben der vollen.
metal-estimate = Jede Zahl ist eine Schätzung aus einem Modell.
try-a-move = Zug ausprobieren
try-touch = Die Karte dort berühren, wo die Spitze hin soll.
move = Arbeitsschritt
move-push = Von hinten drücken
move-tap = Niederklopfen
move-pull = Am Kleber ziehen
tip = Spitze
tip-sharp = Spitz, 8 mm
tip-ball = Kugel, 16 mm
tip-blunt = Stumpf, 30 mm
tip-flat = Flach, 16 mm
tip-strip = Lang, 30 × 6 mm
tip-tab = Klebeadapter, 24 mm
travel = Weg ab Berührung
less = Weniger
more = Mehr
no-quick-answer = Hier keine schnelle Antwort: das Blech springt unterwegs um, oder die Stelle liegt außerhalb.
lift-held = Hub beim Halten
lift-left = Hub, der bleibt
stands-then = Steht dann bei
shoulder = Schulter ringsum
out-at = in { $far } Abstand
tip-force = Kraft der Spitze
strain-spent = Verbrauchtes Metall
paint-risk = Lack, dieser Schritt
paint-way-back = Lack, ganzer Rückweg
risk-low = geringes Risiko
risk-raised = erhöhtes Risiko
risk-high = hohes Risiko
glue-holds = Kleber
glue-metal = hält
glue-either = kann abreißen
glue-glue = reißt zuerst ab
hand-force = Kraft der Hand
bar-gives = Weg der Hand, den der Hebel schluckt
bar-used = Hebel, von seiner Streckgrenze
paint-and-bar = Lack, Temperatur, Hebel
film-factory = Werkslack
film-refinish = Nachlackiert
paint-aged = Alter oder zweiter Lack
with-bar = Mit rundem Stahlhebel über einen Drehpunkt
bar-hand_mm = Drehpunkt bis Hand
bar-tip_mm = Drehpunkt bis Spitze
bar-diameter_mm = Durchmesser des Hebels
try-estimate = Schätzungen, nie ein Versprechen, am wenigsten beim Lack. Die Vorgaben des Fahrzeugherstellers gehen vor.
sheet-steel_dc04 = Stahl, Tiefziehgüte, wie geliefert
sheet-steel_dc06 = Stahl, weichste Tiefziehgüte, wie geliefert
sheet-steel_bh180_panel = Stahl, Bake-Hardening, fertige Außenhaut
sheet-steel_bh220_panel = Stahl, festeres Bake-Hardening, fertige Außenhaut
sheet-steel_dp500_panel = Stahl, hochfest, fertige Außenhaut
sheet-aluminium_6016_panel = Aluminium 6016, fertige Außenhaut
sheet-aluminium_5182_panel = Aluminium 5182, fertige Außenhaut
### Papers of a job
papers-issue = Papier ausstellen
papers-issued = Ausgestellt
papers-none = Noch kein Papier ausgestellt.
paper-which = Welches Papier
paper-estimate = Kostenvoranschlag
paper-authorisation = Reparaturauftrag
paper-supplement = Nachtrag
paper-work_order = Arbeitsauftrag
paper-evidence = Nachweis
paper-certificate = Bescheinigung
paper-warranty = Garantie
paper-cancellation = Widerrufsrecht
paper-invoice = Rechnung
paper-credit_note = Gutschrift
paper-receipt = Quittung
paper-language = Sprache des Papiers
paper-issue = Ausstellen
paper-being-made = Wird gemacht …
paper-issued = { $paper } { $number } ist ausgestellt
paper-stays = Ausgestelltes bleibt, wie es ist. Auf eine falsche Rechnung folgt eine Gutschrift.
paper-signed-by = unterschrieben von { $name }
paper-no-e-invoice = Ohne E-Rechnung: warum
why-supplement = Was sich ändert und warum
why-credit_note = Warum erstattet wird
amount-credit_note = Erstattung ohne Steuer
amount-credit_note-hint = Für die ganze Rechnung leer lassen.
amount-receipt = Gezahlt, mit Steuer
amount-receipt-hint = Für alles Offene leer lassen.
paid-by = Gezahlt durch
means-10 = Bar
means-48 = Karte
means-58 = Überweisung
buyer-vat = USt-IdNr. des Kunden
buyer-vat-hint = Nur wenn der Kunde ein Unternehmen ist.
sign-name = Wer unterschreibt
sign-here = Fläche zum Unterschreiben
sign-hint = Mit Finger oder Stift unterschreiben. Die Zeit wird beim Ausstellen genommen.
sign-undo = Letzter Strich weg
sign-clear = Leeren
billing = Wie der Betrieb abrechnet
billing-country = Land des Betriebs
billing-country-none = nach der Währung
billing-vat = USt-IdNr.
billing-vat-hint = Mit den Buchstaben des Landes, etwa DE123456789.
billing-tax = Steuernummer
billing-register = Registernummer
billing-account = Konto (IBAN)
billing-bank = Bank (BIC)
billing-days = Tage bis zur Zahlung
billing-exempt = Warum keine Steuer berechnet wird
billing-exempt-hint = Leer lassen, wo Steuer berechnet wird. Kleinunternehmer schreiben hier ihre Regel hin.
billing-save = Speichern
billing-saved = Gespeichert

### Counting hail, and what waits on the device

hail-count = Hagel zählen
hail-bar = Größen und das gewählte Teil
hail-choose-panel = Tippe auf ein Teil
hail-of = { $panel } hier, { $total } am Auto
hail-one = Delle von { $size }
hail-add = Eine mehr von { $size }, bisher { $count }
hail-choose-size = { $size } wählen
hail-help = Tippe auf das gewählte Teil, auf +1 oder eine Größe: jedes Tippen ist eine Delle und bleibt sofort auf diesem Gerät.
hail-counts = Dellen nach Teil und Größe
hail-all = Ganzes Auto
nothing = nichts
job-unsent = noch nicht gesendet
jobs-of-device = Der Server des Betriebs ist nicht erreichbar. Dies sind die Aufträge, die dieses Gerät kennt.
photos-waiting = { $count ->
    [one] Ein Foto wartet auf diesem Gerät.
   *[other] { $count } Fotos warten auf diesem Gerät.
  }
waiting = Wartet auf das Senden
waiting-count = { $count ->
    [one] { $count } Eintrag wartet auf das Senden
   *[other] { $count } Einträge warten auf das Senden
  }
waiting-none = Alles ist an den Server des Betriebs gesendet.
waiting-away = Der Server des Betriebs ist nicht erreichbar. Alles bleibt auf diesem Gerät und wird gesendet, sobald er wieder da ist.
waiting-sending = Wird gesendet.
waiting-not-kept = Dieser Browser behält nichts, wenn die Seite zugeht (ein privates Fenster?). Öffne Dentwright in einem gewöhnlichen Fenster, bevor du mehr eingibst.
waiting-send = Jetzt senden
waiting-shop = Der Betrieb
waiting-new = Neuer Auftrag
waiting-damage = Schaden markiert
waiting-tap = Dellen gezählt
waiting-edit = Felder geändert
waiting-entries = { $count ->
    [one] ein Eintrag
   *[other] { $count } Einträge
  }
clashes = Zweimal eingegeben
clashes-help = Jemand anderes hat dasselbe Feld geändert, während dieses Gerät fort war. Wähle, was gilt; alles andere ist zusammengelegt.
clash-mine = Von diesem Gerät
clash-theirs = Vom anderen
refused = Nicht angenommen
refused-help = Der Server hat dies nicht angenommen. Es bleibt auf diesem Gerät, bis du es noch einmal sendest oder aufgibst.
refused-again = Noch einmal senden
refused-give-up = Dies aufgeben

### At the car

arrival = Wie es kam
arrival-hint = Was vor der Arbeit da war, mit dem Kunden am Auto vereinbart.
panel = Teil
checklist = Fotos
checklist-done = { $done } von { $all }
checklist-damages = Schäden ohne Foto:
shot-front_left = Vorn links, mit Kennzeichen
shot-front_right = Vorn rechts
shot-rear_right = Hinten rechts, mit Kennzeichen
shot-rear_left = Hinten links
shot-instruments = Instrumente, mit Kilometerstand
shot-vin = Nummer am Auto
shot-old = Altschäden
shot-gauge = Lackmessgerät am Auto
shot-missing = Tippen und aufnehmen
shot-taken = Aufgenommen
shot-waits = Aufgenommen, wartet auf das Senden
old-damage = Altschäden
old-hint = Tippe auf ein Teil, markiere die Stelle, sage, was es ist. Es steht auf dem, was der Kunde unterschreibt, und gehört nicht zur Arbeit.
old-what = Was es ist
old-scratch = Kratzer
old-chip = Steinschlag
old-crack = Gerissener Lack
old-dent = Delle, bleibt
old-rust = Rost
old-broken = Gebrochen oder fehlt
old-repaired = Früher repariert
old-mark = Altschaden ist hier
old-remove = Markierung entfernen: { $panel }
old-removed = Markierung entfernt: { $panel }
paint-readings = Lackmessung
paint-thickness = Dicke
paint-wrong = Gesucht ist eine Dicke über 0 und höchstens { $most }.
paint-keep = Messung behalten
paint-of = Median von { $count }
paint-back = Letzte Messung zurücknehmen: { $panel }
paint-says-usual = Wie die anderen Teile des Autos, in der Mitte { $others }.
paint-says-thick = Dicker als die anderen Teile des Autos: in der Mitte { $others }, die meisten um höchstens { $spread } daneben. Es kann überlackiert oder gespachtelt sein: frage nach und rechne eher mit Rissen oder Ablösen.
paint-says-thin = Dünner als die anderen Teile des Autos: in der Mitte { $others }, die meisten um höchstens { $spread } daneben. Es kann poliert oder geschliffen sein: zum Polieren bleibt wenig.
paint-says-too_few = Zu wenige zum Vergleichen: miss wenigstens drei andere Teile.
paint-rule = Ein Teil fällt auf, wo sein Median weiter vom Median der anderen liegt als 3,5 ihrer üblichen Streuung (Iglewicz und Hoaglin 1993). Das sagt, dass der Lack anders ist, nicht warum.
metal-of-panel = Metall: { $panel }
sign-at-car = Am Auto vereinbart
sign-old = { $count ->
    [0] Kein Altschaden ist markiert.
    [one] Ein Altschaden ist markiert und wird genannt.
   *[other] { $count } Altschäden sind markiert und werden genannt.
  }
consent-language = Sprache des Kunden
consent-no-advice = Aus einer Länderdatei des Programms; keine Rechtsberatung.
consent-away = Die Worte kommen vom Server des Betriebs, der nicht erreichbar ist, und dieses Gerät hat sie in dieser Sprache noch nicht gesehen.
sign-keep = Unterschrift behalten
sign-wrong = Niemand hat unterschrieben. Lass den Kunden auf der Fläche unterschreiben.
signed-at-car = Unterschrieben von { $name }
signed-on = Unterschrieben von { $name }, { $when }, mit { $count ->
    [0] keinem Altschaden
    [one] einem Altschaden
   *[other] { $count } Altschäden
  }.
signed-changed = Die Altschäden sind seitdem anders: lass noch einmal unterschreiben.

### Üben
rehearse = Üben
rehearse-about = Ein gerechnetes Blech unter geraden Linien: drücken, ziehen, klopfen und sehen, was es tut. Es zählt nicht und kostet kein Auto.
learner = Wer übt
learner-missing = Ein Name, damit das Blatt Ihres ist
panel-being-made = Das Blech entsteht …
level = Stufe
level-done = { $tried ->
    [0] Noch nicht versucht
   *[other] { $done } von { $tried } fertig
 }
level-first_ding = Eine erste Delle
level-about-first_ding = Ein rundes Tief.
level-wide_low = Ein weites Tief
level-about-wide_low = Weich und weit; das Blech gibt lange nach, ehe etwas bleibt.
level-sharp_low = Ein scharfes Tief
level-about-sharp_low = Die Schultern kommen hoch, ehe die Mitte kommt.
level-cold_panel = Ein kaltes Blech
level-about-cold_panel = Kalter Lack reißt. Vor dem ersten Druck nachdenken.
level-crease = Ein Knick
level-about-crease = Lang, mit einem Grat auf jeder Seite.
level-two_lows = Zwei Tiefs
level-about-two_lows = Jedes hält das andere; Aluminium federt zurück.
level-lows_at_a_line = Zwei Tiefs neben einer Karosserielinie
level-about-lows_at_a_line = Die Linie verbirgt die Spannung.
learners-sheet = Übungsblatt
week-of = Woche vom { $date }
week-sum = { $count } Bleche, { $done } fertig.
week-read = Richtig gelesen { $reading }, Spitze neben dem Ziel { $aim }.
score-finished = Fertig
score-reading = Richtig gelesen
score-aim = Spitze neben dem Ziel
score-moves = Züge
score-spent = Verbrauchtes Blech
score-left = Größter Rest
score-snaps = Umgeschnappt
score-cracked = Der Lack ist gerissen
score-done = Fertig
score-not-done = Nicht fertig
score-limit = fertig ab { $limit }
from-front = { $count } von vorn
read-lines = Die Linien schieben, die Tafel näher und weiter rücken, den Kopf bewegen. Dann im Bild berühren, wo das Blech tief oder hoch steht, und sagen, welches von beiden.
calling = Was dort ist
say-it = Das lese ich
take-back-mark = Letzte Marke zurücknehmen
skip-reading = Mit der Arbeit beginnen
to-work = Mit der Arbeit beginnen
claim-right = Richtig: { $what }
claim-wrong = Nein: dort steht kein { $what }, das zählt
lines-wide = Die Linien sind dort { $times }-mal so breit wie daneben.
lines-narrow = Die Linien sind dort { $times }-mal so breit wie daneben: schmaler.
lines-even = Die Linien sind dort etwa so breit wie daneben.
lines-turned = Die Linien stehen dort auf dem Kopf: schiebt man sie hin, laufen sie her. Breite { $times }-fach.
width-tells-nothing = Ein Tief ist ein Hohlspiegel: nahe der Tafel sind seine Linien breit, aus größerer Ferne kehren sie sich um und werden schmal. Die Breite allein sagt weder Tief noch Hoch. Was gegen die Tafel läuft und was sich beim Zurücktreten ändert, sagt es.
board-away = Vom Blech zur Tafel
tip-pad = Spitze hinter dem Blech: halten lehnt sie an, ziehen bewegt sie
tip-pad-help = Hier halten: die Spitze lehnt von hinten an. Sie in den Linien finden und zum Tief ziehen.
tip-pad-held = Sie lehnt an. Ziehen, bis sie steht, wo sie soll.
touch-picture = Im Bild berühren, wohin.
rehearsed-tip-sharp = Scharf, 6 mm
rehearsed-tip-ball = Kugel, 12 mm
rehearsed-tip-blunt = Stumpf, 24 mm
rehearsed-tip-tab = Klebepilz, 24 mm
do-push = Drücken
do-tap = Klopfen
do-pull = Ziehen
sheet-settles = Das Blech setzt sich …
moves-made = { $count ->
    [0] Noch kein Zug.
    [1] 1 Zug.
   *[other] { $count } Züge.
 }
move-held = Die Linien haben sich bewegt.
move-nothing = Es ist zurückgefedert: nichts ist geblieben.
move-snapped = Das Blech ist umgeschnappt.
move-cracked = Der Lack ist gerissen.
move-lost = Das Blech ist ausgewichen; es steht wie zuvor.
warm-panel = Blech auf 35 °C wärmen
end-rehearsal = Ich bin fertig
rehearse-limits = Das Blech antwortet nach einem gerechneten Modell erfundener Teile; ein Schlag gilt als langsamer Druck. Am echten Auto gilt das Verfahren des Herstellers.
replay = Noch einmal ansehen
replay-play = Abspielen
replay-stop = Anhalten
replayed = { $kind }: { $held } gehalten, { $left } geblieben, Spitze { $aim } neben dem Ziel.
rehearse-again = Ein anderes Blech
lens-calibrated = Objektiv bekannt seit { $date }, { $days ->
    [0] vom selben Tag
    [1] einen Tag alt
   *[other] { $days } Tage alt
 }.

### The day
promised-time = Um
car-place = Standort
car-place-hint = Wo das Auto steht oder wo du es triffst
car-place-none = Ohne Standort
order = Geordnet nach
order-promise = Zusage
order-stage = Stand
order-place = Standort
order-newest = Neueste zuerst
due-group-late = Überfällig
due-group-today = Heute
due-group-tomorrow = Morgen
due-group-later = Später
due-group-none = Nicht zugesagt
due-group-done = Arbeit fertig
due-late = { $days ->
    [one] einen Tag überfällig
   *[other] { $days } Tage überfällig
}
due-late-today = überfällig seit { $time }
due-today = heute
due-tomorrow = morgen
due-at = { $when }, { $time }
step-time = Zeit
clock = Stechuhr
clock-start = starten
clock-stop = Stopp
clock-runs = Uhr läuft
clock-started = { $kind }: die Uhr läuft
clock-stopped = { $kind }: gestoppt
clock-hint = Drücke, was du jetzt tust. Eine andere Arbeit stoppt die vorige; dieselbe noch einmal stoppt die Uhr.
who-works = Wer arbeitet
me = Ich
technician = Techniker
work-kind = Arbeit
work-push = Drücken
work-tap = Klopfen
work-glue = Kleben
work-trim = Aus- und Einbau
work-reading = Lesen
work-finish = Finish
work-here = Dieser Auftrag
work-shop = Der Betrieb
work-shares = Wohin die Zeit geht
work-shares-ground = Alle gestochene Zeit des Betriebs nach Art der Arbeit. Was fraglich ist oder noch läuft, ist nicht dabei.
time-sum = An den Dellen gearbeitet, ohne Aus- und Einbau
time-in-doubt = { $count ->
    [one] Ein Eintrag ist fraglich und zählt nirgends, bis er berichtigt ist.
   *[other] { $count } Einträge sind fraglich und zählen nirgends, bis sie berichtigt sind.
}
time-to-learn = Zum Angebot, um daraus zu lernen
time-by-hand = Zeit von Hand eintragen
time-correct = Ändern
time-from = Von
time-until = Bis
time-remove = Eintrag entfernen
time-removed = { $kind }: Eintrag entfernt
time-is-right = Er stimmt so
time-backwards = Dieser Eintrag endet vor seinem Beginn: eine Uhr wurde zurückgestellt. Nichts ist verloren; berichtige Anfang oder Ende.
time-left-running = { $hours } am Stück: weitergelaufen, vielleicht über Nacht? Berichtige das Ende.
worked-from-clock = { $hours } von der Stechuhr übernehmen
crew = Wer hier arbeitet
crew-hint = Wer allein arbeitet, braucht hier niemanden. Ab zweien fragt jedes Gerät, wer es in der Hand hat.
crew-add = Jemanden hinzufügen
crew-name = Name
crew-gone = Arbeitet nicht mehr hier
pay-by = Bezahlt
pay-none = nicht nach diesem Zettel
pay-hour = nach Stunden
pay-share = Anteil am Arbeitslohn
pay-rate = Lohn je Stunde
pay-percent = Anteil am Arbeitslohn
pay = Lohnzettel
pay-before = Monat davor
pay-after = Monat danach
pay-until = Bis einschließlich
pay-nobody = Noch niemand hat gestochen.
pay-clocked = { $hours } gestochen
pay-jobs = { $count ->
    [one] 1 Auftrag fertig
   *[other] { $count } Aufträge fertig
}
pay-by-hour = { $rate } je Stunde
pay-by-share = { $percent } % vom Arbeitslohn
pay-by-none = nicht nach diesem Zettel
pay-job = Auftrag
pay-time = Zeit daran
pay-labour = Arbeitslohn
pay-part = Anteil
pay-unclocked = Fertig, aber niemand hat daran gestochen, darum in keiner Zeile: { $jobs }
pay-unpriced = Fertig, aber das Angebot lässt sich nicht in der Währung des Betriebs machen: { $jobs }
pay-ground = Stunden sind die in diesen Tagen gestochenen; Zeit auf zwei Uhren zugleich zählt einmal. Ein Anteil ist vom Arbeitslohn der in diesen Tagen fertigen Aufträge, nach der Zeit an jedem; wo das Angebot selbst teilt, gilt dessen Anteil. Lohnrecht wird hier nicht geprüft.
pay-csv = Als Tabelle sichern (CSV)
data = Kalender, Tabellen, Archiv
data-links = Kalenderdatei, Tabellen, der ganze Betrieb als eine Datei
calendar = Kalender
calendar-help = Zugesagte Autos für deinen Kalender, bis sie übergeben sind. Ein Kalenderprogramm auf diesem Rechner kann dieser Adresse folgen; für ein anderes Gerät sichere die Datei.
calendar-get = Kalenderdatei sichern
tables = Tabellen
tables-help = Für Tabellenprogramme: Kommas, Punkte in Zahlen, UTF-8 (RFC 4180).
table-jobs = Aufträge
table-dents = Dellen
table-lines = Zeilen der Angebote
archive = Der ganze Betrieb als eine Datei
archive-help = Akte, Fotos, Karten und Papiere in einer Zip-Datei. Hier oder anderswo aufgenommen ergänzt sie, was fehlt; was da ist, bleibt wie es ist.
archive-get = Archiv sichern
archive-take = Archiv aufnehmen
archive-sending = Archiv wird gesendet …
archive-opening = Wird geprüft und aufgenommen …
archive-done = { $jobs ->
    [one] Ein Auftrag aufgenommen
   *[other] { $jobs } Aufträge aufgenommen
}, { $there ->
    [0] keiner war vorher hier.
    [one] einer war schon hier und bleibt, wie er ist.
   *[other] { $there } waren schon hier und bleiben, wie sie sind.
}
archive-renumbered = Auftrag { $was } heißt jetzt { $is }: seine Nummer war vergeben.
erase = Daten des Kunden löschen
erase-who = Alles, was { $name } nennt, geht aus diesen Aufträgen:
unnamed-customer = den Kunden
erase-only-name = nur der Name ist gleich
erase-goes = Was geht
erase-goes-person = Name, Anschrift, Telefon, E-Mail, Kennzeichen, FIN, Standort, alle Notizen
erase-goes-photos = { $photos } Fotos, { $readings } Lesungen mit ihren Karten
erase-goes-papers = { $count ->
    [0] Keine Papiere ohne Nummer
    [one] Ein Papier ohne Nummer, mit seiner Unterschrift
   *[other] { $count } Papiere ohne Nummer, mit ihren Unterschriften
}
erase-stays = Was bleibt
erase-stays-job = Was niemanden nennt: Marke und Modell, Dellen, Angebot, gearbeitete Stunden
erase-stays-paper = { $number }, bis { $until }, weil das Steuerrecht es verlangt
erase-years = { $years } Jahre nach dem Jahr der Ausstellung; keine Rechtsberatung. Quelle:
erase-when = Der Betrieb selbst tut es in zehn Minuten. Bis dahin lässt es sich absagen.
erase-now = { $count ->
    [one] Aus diesem Auftrag löschen
   *[other] Aus { $count } Aufträgen löschen
}
erase-ordered = Die Daten des Kunden gehen um { $time }
erase-waits = Die Daten des Kunden dieses Auftrags gehen um { $time }. Bis dahin ist noch alles da.
erase-call-off = Absagen
erase-done = Die Daten des Kunden dieses Auftrags gingen um { $time }. Was übrig ist, nennt niemanden.

### Zwei an einem Angebot
trouble-quote_changed = Dieses Angebot wurde inzwischen auf einem anderen Gerät geändert.
trouble-quote_changed-next = Was hier steht, bleibt auf diesem Gerät. Das andere übernehmen oder dieses an seine Stelle setzen.
take-theirs = Das andere nehmen
keep-mine = Dieses behalten

### Eine Stelle wärmen
warm-it = Wärmen
warm-with = Womit
warmer-hot_air = Heißluft
warmer-lamp = Strahler
warmer-induction = Induktion
warm-backing = Auf der Rückseite
backing-air = Luft
backing-foam = Schaum, Filz
backing-brace = Geklebte Strebe
warm-from = Das Blech hat
warm-to = Wärmen auf
warm-behind = Was nicht zu warm werden darf
heat-paint = der Lack selbst
heat-battery = Hochvoltbatterie
heat-adhesive = Geklebte Strebe oder Naht
heat-temper = Aluminiumblech
heat-foam = Schaum, Verkleidung
heat-wiring = Kabel
warm-reached = Warm genug nach
warm-stays = Bleibt dann über { $degrees } für
warm-limit = Nie über
warm-over = Das ist zu warm für das, was dort ist. Die niedrigste Grenze gilt.
warm-never = nicht binnen einer Stunde
warm-long = eine Stunde und länger
span-seconds = { $low } bis { $high } s
warm-ground = Eine Schätzung für eine Stelle von 60 mm Radius; Geräte geben verschieden viel. Auf dem Lack messen. Die Grenzen des Fahrzeugherstellers gehen vor. Keine Wärme bei Lösemittel oder Gasfedern.
### Der Plan und die Arbeit
to-the-plan = Reparatur planen
plan-on = Weiter planen
plan-on-help = Plant die nächste Runde mit denselben Angaben wie zuvor, für das, was jetzt am meisten heraussteht.
to-the-work = An die Arbeit
to-work-without = Ohne Plan arbeiten
plan-of = { $panel }: der Plan
plan-ask = Aus der gemessenen Form wird berechnet, welche Arbeitsschritte sie eben bringen und ob es geht. Das dauert einige Sekunden bis etwa eine Minute; alles ist eine Schätzung.
plan-spot-deepest = Was am meisten heraussteht
plan-make = Plan machen
plan-other = Neu angeben und planen
plan-worked-out = Der Plan wird gemacht
plan-panel-c = Blech jetzt
plan-most-c = Höchstens erlaubt
plan-most-hint = Die niedrigste Grenze, die gilt: Lack, Kleber, Kunststoff oder Kabel dahinter.
plan-c-wrong = Ein Blech hat −20 bis 70 °C, und der Lack darf 0 bis 85 °C warm werden.
plan-glue = Kleber von vorn
plan-no-glue = Kein Kleber
plan-more = Herstellervorgabe, Kosten
makers-rule = Eine Vorgabe des Herstellers, die es verbietet
makers-rule-hint = In eigenen Worten, wo es eine gibt. Der Plan sagt dann nein.
cost-ours = Diese Reparatur
cost-conventional = Herkömmliche Reparatur
costs-wrong = Beide Kosten als Zahlen, oder keine.
plan-level = Eben innerhalb deiner Grenze von { $limit }
plan-level-help = Nichts steht darüber heraus; es gibt nichts zu planen.
plan-can-yes = Es geht, soweit berechnet
plan-can-not_reached = Nichts Berechnetes spricht dagegen, aber die vorhergesagten Runden erreichen deine Grenze nicht
plan-can-no_move = Nichts Berechnetes spricht dagegen
plan-can-push_to_paint = Fast eben, dann Struktur angleichen oder lackieren
plan-can-no = So geht es nicht
plan-can-no-help = Die herkömmliche Reparatur ist der Weg. Was folgt, ist nur, was das Blech täte.
plan-expected = Nach allen vorhergesagten Runden bleiben höchstens { $left } ± { $doubt }; deine Grenze ist { $limit }.
plan-not-reached = Die vorhergesagten Runden erreichen die Grenze nicht. Der Plan wird nach jeder Messung neu gemacht und geht von dem aus, was bleibt; ob er die Grenze dann erreicht, ist nicht vorhergesagt.
plan-no-move = Es fand sich kein Arbeitsschritt, der hilft: von näher messen oder nach Augenmaß arbeiten.
plan-bridged = { $share } des Ausschnitts wurden nicht gelesen und sind geraten: eine Tiefstelle, die zum Lesen zu steil ist, ist tiefer als hier gerechnet.
plan-misfit = Das berechnete Blech weicht { $misfit } vom Gemessenen ab. Richtungen mehr trauen als Beträgen.
plan-fine-tips = Zu fein, als dass dieses Modell wüsste, was sie tun: { $tips }.
plan-unreached = Nichts erreicht die Tiefstelle { $place }: Kleber erlauben, oder nein sagen.
plan-hand = Deine Hand: ein verlangter Hub fällt { $gain } ± { $gaindoubt } mal so weit aus; davon behält das Blech { $share } ± { $sharedoubt } mal das Berechnete.
reason-oil_can = Eben gebracht ist es ein Knackfrosch: es springt bei { $force } um.
reason-oil_can-never = Eben gebracht bleibt es nicht stehen: ein Knackfrosch.
reason-stretched = Gestreckt: { $area } % mehr Fläche, als das Blech hatte.
reason-paint = Lack: { $strain } % Dehnung an seiner Oberfläche auf dem Rückweg, auch warm { $risk }.
reason-access = Nichts kommt hin: { $blocked }.
reason-makers_rule = Der Hersteller verbietet es: { $rule }
reason-dearer = Teurer als die herkömmliche Reparatur: { $ours } gegen { $conventional }.
reason-not_computed = Ob es eben gebracht knackfroscht, ließ sich nicht berechnen.
reason-went_over = Nach der letzten Runde stehen { $after } ab, davor { $before }: das Blech hat nachgegeben, oder die Hand ging weit darüber hinaus. Aufhören; vor allem anderen neu hinsehen.
blocked-off_panel = nicht auf dem gezeichneten Blech
blocked-fold = näher als 25 mm an einer Falzkante
blocked-bonded = dort ist etwas am Blech verklebt
blocked-no_opening = kein Hebel, der dort steht, geht durch eine Öffnung
blocked-wall = { $name } ist im Weg
blocked-brace = { $name } ist im Weg
blocked-behind = { $name } ist im Weg
blocked-skin = die Wölbung des Blechs ist im Weg
blocked-no_fulcrum = es gibt nichts zum Abstützen
behind-wiring = Kabel
behind-airbag = Airbag oder Gurtstraffer
behind-glass = Glas
behind-battery = Hochvolt
behind-solid = Etwas Festes
departures = Anders als üblich
departure-crowns_first = Die Tiefstelle kommt vor dem Wulst: { $planned } bleiben gegen { $trade }.
departure-crown_left = Der Wulst von { $height } { $place } wird noch nicht geklopft: die anderen Schritte ändern ihn um { $change }.
departure-tied_together = Beide von zwei verbundenen Dellen werden in einer Runde bearbeitet, die erste bis { $first }: die eine bewegt sich um { $tie } der anderen, damit ist gerechnet.
came-of = Was aus den letzten Schritten wurde
came-of-most = Größte Abweichung: vorhergesagt { $foretold } ± { $doubt }, gefunden { $found }.
came-as_foretold = wie vorhergesagt
came-more = mehr als vorhergesagt
came-less = weniger als vorhergesagt
came-move = vorhergesagt { $foretold } ± { $doubt }, gefunden { $found }
learned-hand-same = Deine Hand tut, was angenommen war: { $after } ± { $doubt } mal der verlangte Hub.
learned-hand-more = Deine Hand hebt weiter als angenommen: { $after } ± { $doubt } mal das Verlangte, nicht { $before }. Die nächsten Beträge sind darum kleiner.
learned-hand-less = Deine Hand hebt weniger weit als angenommen: { $after } ± { $doubt } mal das Verlangte, nicht { $before }. Die nächsten Beträge sind darum größer.
learned-sheet-same = Das Blech behält, was berechnet war: { $after } ± { $doubt } mal.
learned-sheet-more = Das Blech behält mehr als berechnet: { $after } ± { $doubt } mal, nicht { $before }.
learned-sheet-less = Das Blech federt mehr zurück als berechnet: es behält { $after } ± { $doubt } mal, nicht { $before }.
round-now = Diese Runde
round-from-to = Von { $before } auf { $after } ± { $doubt }
round-proved = Jeder Schritt ist durch eine volle Berechnung belegt.
round-left-out = { $count ->
    [one] Ein Schritt ist weggelassen: das Blech würde unterwegs umspringen, oder nichts bliebe.
   *[other] { $count } Schritte sind weggelassen: das Blech würde unterwegs umspringen, oder nichts bliebe.
}
rounds-later = { $count ->
    [one] Eine Runde danach, vorhergesagt
   *[other] { $count } Runden danach, vorhergesagt
}
rounds-later-help = Sie ändern sich mit der nächsten Messung.
read-again-doubt_grows = Dann aufhören und neu messen: was folgt, hängt davon ab, was diese Schritte hinterlassen.
read-again-should_be_level = Dann aufhören und neu messen: es sollte eben sein.
plan-act-push = Drücken
plan-act-pull = Ziehen
plan-act-tap = Klopfen
plan-act-blend = Verteilen
amount-times = { $times } × { $lift }
radius-of = Radius { $radius }
hardness-soft = weich
hardness-medium = mittel
hardness-hard = hart
rack-needle_3 = Feine Spitze
rack-ball_6 = Kleine Kugel
rack-ball_10 = Kugel
rack-cap_16 = Breite Kappe
rack-tab_8 = Kleiner Klebeadapter
rack-tab_14 = Klebeadapter
rack-tab_22 = Breiter Klebeadapter
rack-head_5 = Feiner Kopf
rack-head_8 = Kopf
rack-head_14 = Breiter weicher Kopf
rack-straight_8 = Gerader Hebel, 8 mm
rack-straight_12 = Gerader Hebel, 12 mm
rack-elbow_40 = Winkelhebel, 40 mm
rack-elbow_80 = Winkelhebel, 80 mm
rack-half_bend = Halb gebogener Hebel
rack-hand_hook = Handhaken
rack-step_bar = Stufenhebel
rack-thin_rod = Dünner Stab
rack-blade_25 = Flachhebel, 25 mm
rack-pusher = Drücker
rack-eva = Heißkleber
plan-why-large_shape = Große Form vor dem Feinen: diese Tiefstelle ist { $depth } tief.
plan-why-low = Eine Tiefstelle von { $depth } ist übrig.
plan-why-high = Eine Hochstelle von { $height } ist übrig.
plan-why-crown = Ein Wulst von { $height } neben einer Tiefstelle von { $low }; durch diesen Schritt allein { $comes ->
    [up] kommt sie hoch
   *[down] geht sie tiefer
} um { $change }.
plan-lines-opens = Die Biegung über der Tiefstelle öffnet sich.
plan-lines-flattens = Die Ausbuchtung über der Hochstelle wird flacher.
held-above = { $height } über eben
held-below = { $height } unter eben
plan-stays = Gehalten steht die Stelle { $stands }; losgelassen bleiben { $leaves } ± { $doubt } des Wegs.
plan-stop = Aufhören und neu messen, sobald sie sich um { $height } bewegt hat.
plan-heat = Lack bei { $warm }: { $risk }, { $strain } % Dehnung.
with-not_drawn = Von hinten. Was dort ist, wurde nicht gezeichnet: ob ein Hebel hinkommt, ist nicht bekannt.
with-knock_down = Von vorn.
with-tab = { $glue }: hält sicher { $sure }, vielleicht { $perhaps }. Gerade abziehen.
with-bar-through = Von hinten mit { $tool }, { $tip } darauf, durch { $opening } von { $wall }, { $inside } tief.
with-bar-trim = Zuerst ab: { $trim }.
with-bar-over = { $over }, { $square }° schräg; er gibt { $force }.
with-bar-short = Vielleicht gibt er die gewünschte Kraft nicht.
over-rim = Über den gepolsterten Rand der Öffnung, { $packing } unterlegt
over-brace = Über { $name }, { $packing } unterlegt
over-end_on = Auf Stoß
move-why = Warum
move-lines = Linien
move-with = Womit
move-stop = Halt
move-warm = Wärme
move-force = etwa { $force }
plan-cautions = Vorsicht
plan-cautions-always = Die Vorgaben des Fahrzeugherstellers, örtliches Recht und befugte Leute gehen vor. Über den Lack wird nichts versprochen.
plan-caution-airbag = Airbag oder Gurtstraffer dahinter: abklemmen und warten, wie dessen Hersteller sagt; kein Hebel in der Nähe.
plan-caution-high_voltage = Hochvolt dahinter: Befugte schalten frei und prüfen auf Spannungsfreiheit; keine Wärme daran.
plan-caution-wiring = Kabel dahinter: Hebel fernhalten.
plan-caution-glass = Glas dahinter: schützen; ein Hebel an seiner Kante bricht es.
plan-caution-glue = Heißkleber verbrennt die Haut; keine Wärme, bevor das Lösemittel weg ist; Kleber kann schwachen oder nachlackierten Lack abheben.
plan-caution-tapping = Klopfen: Gehör- und Augenschutz; Handschuhe an Blechkanten.
plan-caution-not_drawn = Dahinter ist nichts gezeichnet: nach Airbags, Kabeln, Glas und verklebten Streben sehen, bevor ein Hebel hineingeht.
plan-caution-corrosion = Nach der Arbeit innen wieder gegen Rost schützen. Nie bohren; nie Verklebtes oder Geschweißtes lösen.
on-the-photo = Auf dem Foto
on-the-map = Auf der Karte
marks-where = Wo gearbeitet wird
marks-help = Dreieck: nach außen. Raute: nach innen. Blau ist tief, Orange ist hoch.
work-at = { $panel }: bei der Arbeit
work-leave = Die Arbeit verlassen
work-move = Schritt { $number } von { $count }
work-since = seit Beginn der Arbeit
work-this-move = dieser Schritt
work-done = Fertig
work-undo = Zurück
work-skip = Auslassen
work-own = Eigener Schritt
work-no-plan = Es braucht keinen Plan: die Uhr, eigene Schritte und dazwischen Messungen.
work-round-over = Die Runde ist vorbei
work-round-over-help = Das Blech neu messen: was folgt, hängt davon ab, was diese Schritte hinterlassen haben.
work-made-count = { $count ->
    [0] Noch kein Schritt vermerkt
    [one] Ein Schritt vermerkt
   *[other] { $count } Schritte vermerkt
}
work-read-again = Neu messen
work-level = Es ist eben innerhalb der Grenze.
work-noted = Vermerkt: { $what }
work-taken-back = Zurückgenommen: { $what }
work-skipped = Ausgelassen: { $what }
work-clock-start = Uhr starten: { $kind }
note-move = Schritt vermerkt
take-back-move = Schritt zurückgenommen
hands-free = Ohne Hände
knock = Anklopfen
knock-on = Zweimal ans Telefon oder seinen Halter klopfen, dann kurz Ruhe: das heißt „Fertig“. Stetes Klopfen am Blech zählt nicht.
knock-insecure = Unter dieser Adresse gibt der Browser keine Bewegung her. Die App unter ihrer https-Adresse öffnen.
knock-none = Dieser Browser gibt keine Bewegung her. Die Tasten nehmen, oder die Stimme.
knock-denied = Das System lässt die Seite keine Bewegung spüren. In den Einstellungen des Browsers für diese Seite erlauben.
knock-silent = Dieses Gerät meldet keine Bewegung. Die Tasten nehmen, oder die Stimme.
voice = Stimme
voice-on = „Fertig“, „zurück“ oder „weiter“ sagen; „weiter“ lässt aus. Manche Browser schicken den Ton zum Verstehen an ihren Hersteller.
voice-insecure = Unter dieser Adresse hört der Browser nichts. Die App unter ihrer https-Adresse öffnen.
voice-none = Dieser Browser versteht keine Sprache. Die Tasten nehmen, oder anklopfen.
voice-denied = Die Seite darf das Mikrofon nicht nutzen. In den Einstellungen des Browsers für diese Seite erlauben.
voice-failed = Der Sprachdienst des Browsers antwortet nicht; ohne Netz kann er es oft nicht. Die Tasten nehmen, oder anklopfen.
aloud = Vorlesen
aloud-on = Der nächste Schritt wird vorgelesen.
aloud-none = Dieser Browser kann nicht sprechen.
screen-sleeps = Der Browser hält den Bildschirm hier nicht wach: im Gerät so einstellen.
spoken-lift = { $mm } Millimeter heben
spoken-lower = { $mm } Millimeter senken
spoken-times = { $times } mal
spoken-move = Schritt { $number }. { $act }, { $tip }, { $far }.
spoken-over = Die Runde ist vorbei. Neu messen.
heat = Wärme
heat-wanted = Den Lack auf { $warm } wärmen
heat-now = Gewärmt auf
heat-start = Herunterzählen
heat-left = warm genug für
heat-soon = Bald zu kalt
heat-over = Für diesen Schritt zu kalt: neu wärmen
heat-stays = Hier fällt es nicht unter { $warm }.
heat-falls = bis es unter { $warm } fällt
heat-clear = Herunterzählen beenden
heat-estimate = Eine Schätzung für stehende Luft. Den Lack messen; nie über das höchstens Erlaubte.
own-move = Ein eigener Schritt
own-place = Die Karte dort berühren, wo gearbeitet wird.
own-placed = { $place }
own-tip = Spitze
own-lift = Hub
own-lower = Tiefe
own-times = Wie oft
own-note = Vermerken
look-again = Blech kann nachgeben: neu messen
look-again-short = Heute neu messen
look-tomorrow = Morgen noch einmal ansehen
look-tomorrow-help = Blech kann über Nacht nachgeben. Der Schaden wird dann als fällig gezeigt.
look-set = Du wirst am { $day } erinnert.
look-off = Nicht nötig
to-behind = Zeichnen, was dahinter ist
behind-of = { $panel }: was dahinter ist
behind-draw = Zeichnen
thing-opening = Öffnung
thing-hole = Rundes Loch
thing-slot = Öffnung an einer Kante
thing-brace = Strebe
thing-bonded = Verklebung
thing-wiring = Kabel
thing-airbag = Airbag, Gurtstraffer
thing-glass = Glas
thing-battery = Hochvolt
thing-solid = Etwas Festes
thing-ask = Was kommt hierhin?
thing-name = Was es ist
thing-trim = Verkleidung, die zuerst ab muss
thing-trim-hint = Leer lassen, wo nichts davor ist.
thing-deep = Hinter der Haut um
thing-wide = Breite
thing-bears = Ein Hebel darf sich darauf stützen
thing-remove = Entfernen
thing-removed = { $what }: entfernt
wall-inner = Innenblech
wall-top = obere Kante
wall-bottom = untere Kante
wall-left = linke Kante
wall-right = rechte Kante
behind-drawing = { $count ->
    [0] Zeichnung dessen, was dahinter ist, leer
    [one] Zeichnung dessen, was dahinter ist, ein Ding
   *[other] Zeichnung dessen, was dahinter ist, { $count } Dinge
}
behind-things = Was gezeichnet ist
behind-help-box = Auf der Karte von Ecke zu Ecke ziehen. Von außen gesehen, dort wo es liegt.
behind-help-line = Auf der Karte von Ende zu Ende ziehen.
behind-ask-help = Die Karte berühren: die Werkzeuge des Betriebs werden dort probiert.
behind-gap = Von der Haut zum Innenblech
behind-gap-hint = Dort gemessen, wo der Schaden ist.
behind-edges = Die Kanten des Blechs
edge-top = Obere Kante bei y
edge-bottom = Untere Kante bei y
edge-left = Linke Kante bei x
edge-right = Rechte Kante bei x
behind-save = Zeichnung behalten
behind-saved = Behalten
behind-forget = Zeichnung vergessen
behind-foreign = Was dahinter ist, wurde anders gezeichnet und lässt sich hier nicht ändern. Pläne richten sich danach. Zum Neuzeichnen vergessen.
behind-estimate = Eine Skizze: die Haut gilt als eben, Kanten gelten als zu bis auf die gezeichneten Öffnungen. Den Weg erfühlen, bevor gedrückt wird. Nie bohren; nie Verklebtes oder Geschweißtes lösen; Airbags und Hochvolt, wie deren Hersteller sagen.
back-to-plan = Zurück zum Plan
reach-title = Kommt hin, geradeste und stärkste zuerst
reach-none = Nichts kommt hierhin
reach-none-next = Kleber von vorn, oder nein sagen. Bohren ist kein Weg.
reach-looking = Die Werkzeuge werden probiert …
reach-estimate = Soweit die Zeichnung stimmt.
reach-through = Durch { $opening } von { $wall }, { $inside } tief.
reach-goes-on = Die Spitze geht { $travel } weiter.
the-rack = Die Werkzeuge des Betriebs
the-rack-help = Was bei dir hängt. Pläne schlagen nur vor, was hier steht, und nur, was hinkommt.
rack-tools = Hebel, Haken, Flacheisen
tool-add = Hebel hinzufügen
tool-new = Hebel
tool-name = Name
tool-says = Wie du ihn nennst
tool-drawing = Hebel, { $length } entlang seiner Mitte
tool-draw-help = Das kleine Dreieck ist die Spitze; sie drückt in der Zeichnung nach oben. Eine Ecke ziehen, um sie zu verschieben; neben den Hebel tippen, um am Griffende eine anzufügen.
tool-corner-away = Letzte Ecke weg
tool-corners = Ecken in Zahlen
tool-along = Ecke { $number }, entlang
tool-up = Ecke { $number }, zum Blech hin
tool-section = Querschnitt
section-round = Rund
section-flat = Flach
tool-diameter = Durchmesser
tool-width = Breite
tool-height = Dicke
tool-yield = Verbiegt bei
tool-yield-hint = Federstahl etwa 1100.
tool-radius = Radius
tool-hardness = Härte
shelf-tip = Spitzen
shelf-tab = Klebeadapter
shelf-knock_down = Klopfdorne
shelf-add-tip = Spitze hinzufügen
shelf-add-tab = Klebeadapter hinzufügen
shelf-add-knock_down = Klopfdorn hinzufügen
shelf-new-tip = Spitze
shelf-new-tab = Klebeadapter
shelf-new-knock_down = Kopf
rack-flaws = Ein Name fehlt oder kommt zweimal vor, oder ein Hebel hat zwei Ecken an einer Stelle: { $names }
rack-starter = Zurück zu den Werkzeugen, die mit dem Programm kommen
rack-starter-done = Es sind die Werkzeuge, die mit dem Programm kommen.
rack-ground = Formen und Stähle der mitgelieferten Werkzeuge sind üblich, ohne veröffentlichte Quelle.

### Wo die Spitze steht
find-tip = Wo ist meine Spitze?
find-tip-how = Zwei Fotos vom selben Platz, die gespiegelten Linien mit den Marken: eins vorher, eins während die Spitze leicht anliegt.
tip-before = Foto vorher
tip-before-taken = Foto vorher: gemacht. Ein anderes
tip-loaded = Foto mit angelegter Spitze
tip-looking = Wird gesucht…
tip-off = { $far } daneben, Unsicherheit { $doubt }
tip-stands = Bei x { $x }, y { $y }, Unsicherheit { $doubt }
tip-go = Auf der Karte { $across } nach { $side ->
    [left] links
   *[right] rechts
  } und { $along } nach { $way ->
    [down] unten
   *[up] oben
  }.
tip-mark = Spitze
trouble-tip = Es lässt sich nicht sagen, wo die Spitze steht.
