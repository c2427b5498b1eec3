# Remarks of a reading, by their codes (docs/reference.md). The server's own words are English and carry the numbers.
note-camera_calibrated = Das Objektiv war durch Fotos des Kamerablatts bekannt und wurde verfeinert.
note-camera_exif = Die Brennweite der Kamera kam aus den EXIF-Daten des Fotos und wurde verfeinert.
note-camera_guess = Die Fotos nennen keine Brennweite; die eines gewöhnlichen Telefons wurde angenommen und verfeinert.
note-sizes = Die Ecken der Marken passen nicht zueinander: Größe der Marken und der Tafel prüfen, und ob die Marken flach kleben.
note-folded = Ein Teil einer Tiefe oder Höhe war zu steil zum Lesen: sie reicht weiter als die Zahl, die dabei steht.
note-slides = Wie weit die Tafel geschoben wurde, ist aus den Fotos gefunden.
note-second_mirror = Der Kontrast der Linien schwankt wie bei einem schwachen zweiten Spiegel oder grober Unschärfe: Stellen bis etwa 10 µm gibt es vielleicht nicht.
note-lines_order = Welche Linie welche ist, haben die Marken gesagt.
note-still = Ein einzelnes Foto je Richtung: ein schneller Blick, gültig für flache Reste.
note-gauge = Eine gemessene Tiefe ergänzt, was nicht zu lesen war, als glatteste Form, die zu ihr passt; Tiefen, Höhen und Urteil rechnen damit.
note-gauge_agrees = Eine gemessene Tiefe stimmt mit der Karte überein.
note-gauge_near = Eine gemessene Tiefe und die Karte liegen etwas weiter auseinander als ihre Unsicherheit.
note-gauge_off = Eine gemessene Tiefe und die Karte widersprechen sich: Größe der Marken und der Tafel prüfen, und die Null der Messuhr.
