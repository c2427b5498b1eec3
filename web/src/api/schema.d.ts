// Written by `npm run api` from `dentwright openapi`; do not edit.
export interface paths {
    "/api/archive": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Take an archive in, whole or not at all. What is here already stays as it is. */
        post: operations["import"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/archive.zip": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The whole shop as one zip: record, photos, maps, papers. Devices that were let in are not in it. */
        get: operations["archive"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/calendar.ics": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Promised jobs that were not handed over yet, as a calendar (RFC 5545) in the shop's language. */
        get: operations["calendar"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/cameras": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** All calibrated cameras, newest first; of one phone and zoom the newest counts. */
        get: operations["cameras"];
        put?: never;
        /** Calibrate a camera by photos of the camera sheet. */
        post: operations["calibrate"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/cameras/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Forget a calibration. */
        delete: operations["remove_camera"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/captures/{id}/read": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Read a capture once more; earlier readings stay. */
        post: operations["read_again"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/cautions": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What to take care of on a job. */
        get: operations["cautions"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/consent": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What a customer is told before the work, by the shop's country and in a language. No legal advice. */
        get: operations["consent"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/cooling": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** How long a warmed panel stays warm enough. */
        post: operations["cooling"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/countries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Countries that have a pack. No legal advice. */
        get: operations["countries"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/crew": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Everybody, those too who have gone. */
        get: operations["crew"];
        put?: never;
        /** Take somebody in. */
        post: operations["add_technician"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/crew/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Change somebody. */
        put: operations["change_technician"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Remove a damage with everything below it. */
        delete: operations["remove_damage"];
        options?: never;
        head?: never;
        /** Change a damage. */
        patch: operations["change_damage"];
        trace?: never;
    };
    "/api/damages/{id}/behind": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What is behind a damage; nothing where it was not drawn. */
        get: operations["behind"];
        /** Keep what is behind a damage. */
        put: operations["draw_behind"];
        post?: never;
        /** Forget what was drawn behind a damage. */
        delete: operations["forget_behind"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/captures": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Send the photos of a capture with their capture.toml, or a zip of the folder, and read it. */
        post: operations["send_capture"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/dents": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Enter a dent, or several alike. */
        post: operations["add_dent"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/live": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Begin a live session for a damage. An earlier one of the same damage ends. */
        post: operations["begin_live"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/look-again": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Set the day on which a damage is to be read again, or call it off. */
        put: operations["look_again"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/photos": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Add photos to a damage. */
        post: operations["send_photos"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/photos/{hash}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Remove a photo of a damage. */
        delete: operations["remove_photo"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/reach": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Which tools of the shop reach a place from behind, and what stands in the way of the others. */
        post: operations["reach"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/readings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Take over a reading that another installation packed. */
        post: operations["take_over_reading"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/series": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** All readings of a damage, oldest first, laid on the last one, with what was left at each. */
        get: operations["series"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/damages/{id}/work": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The work on a damage: moves, what is known of the hand, when to look again. */
        get: operations["work"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/dents/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Change a dent. */
        put: operations["change_dent"];
        post?: never;
        /** Remove a dent. */
        delete: operations["remove_dent"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/erasure": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Order the erasure. It is done ten minutes later, by the shop itself, and can be called off until then. */
        post: operations["order_erasure"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/hail-tables": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The tables that are offered, newest first. */
        get: operations["hail_tables"];
        put?: never;
        /** Import a table. One with a fault is not kept; the first fault is named by its row and column. */
        post: operations["add_hail_table"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/hail-tables/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Offer a table no longer. Quotes that were made with it keep it. */
        delete: operations["remove_hail_table"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The jobs, newest first. */
        get: operations["jobs"];
        put?: never;
        /** Take a car in. */
        post: operations["take_in"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A job with everything below it. */
        get: operations["job"];
        put?: never;
        post?: never;
        /** Remove a job with everything below it. */
        delete: operations["remove_job"];
        options?: never;
        head?: never;
        /** Change a job. */
        patch: operations["change_job"];
        trace?: never;
    };
    "/api/jobs/{id}/damages": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Mark a damage on a job. */
        post: operations["add_damage"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/edits": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Edit fields of a job, each with the value that was last known. What somebody else has changed since is not
         *     overwritten but comes back with both values.
         */
        post: operations["edit_job"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/erasure": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What would go and what stays. */
        get: operations["erasure"];
        put?: never;
        post?: never;
        /** Call an erasure off. */
        delete: operations["call_off_erasure"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/old-damages": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Mark old damage, or change the mark. */
        put: operations["save_old_damage"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/old-damages/{old}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Take a mark of old damage away. */
        delete: operations["remove_old_damage"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/paint": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Keep a paint reading. */
        put: operations["save_paint"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/paint/{read}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Take a paint reading back. */
        delete: operations["remove_paint"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/papers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Papers of a job, oldest first. */
        get: operations["papers"];
        put?: never;
        /** Issue a paper. What was issued is kept as it is; an invoice that is wrong is followed by a credit note. */
        post: operations["issue_paper"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/photos/{shot}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Add photos to a place of the checklist. */
        post: operations["send_job_photos"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/photos/{shot}/{hash}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Take a photo off the checklist. */
        delete: operations["remove_job_photo"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/quote": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The quote of a job. */
        get: operations["quote"];
        /** Change what the quote is made from. What gives no quote is not saved, nor what another device has changed since. */
        put: operations["save_quote"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/report.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The report. */
        get: operations["report"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/signed": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Keep what the customer signed at the car. */
        put: operations["sign_at_car"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/take-in": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What was recorded when the car was taken in. */
        get: operations["taken_in"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/taps": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Count dents of a job, all of the call or none. */
        post: operations["count"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/times": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Worked time of a job. */
        get: operations["times"];
        put?: never;
        /** Start a clock, or enter a stretch of work whole. */
        post: operations["add_time"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/jobs/{id}/worked": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Enter the worked time of a job; the hours are learned from it. Entering it again takes the earlier one's
         *     place.
         */
        put: operations["save_worked"];
        post?: never;
        /** Take the worked time of a job back; the hours forget it. */
        delete: operations["remove_worked"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/live/{code}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A session; with `after` the answer comes when something has changed, or after twenty seconds. */
        get: operations["live"];
        put?: never;
        post?: never;
        /** End a session. A capture that it has made stays. */
        delete: operations["end_live"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/live/{code}/again": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Begin again, with the set-up photo or with the panel photo. */
        post: operations["live_again"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/live/{code}/board": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** The screen says how large it is and where its tags are. */
        put: operations["live_board"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/live/{code}/photos/{turn}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The photo of a turn. One that must be taken again is refused with the reason; one that comes too late is
         *     passed over.
         */
        post: operations["live_photo"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/live/{code}/shown/{turn}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** The screen shows the picture of a turn. */
        post: operations["live_shown"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/metals": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Metals, paints and glues on file. */
        get: operations["metals"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/moves/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Take a noted move back. */
        delete: operations["take_back_move"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pair": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Pair this device. The code is valid once. */
        post: operations["pair"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pair/offer": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Make a code for another device. Only on the computer that runs the server. */
        post: operations["offer"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/papers/{id}/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A file of a paper, by its name. */
        get: operations["paper_file"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pay": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The pay sheet of a period. */
        get: operations["pay"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/pay.csv": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The same as a table (RFC 4180). */
        get: operations["pay_table"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/photos/{hash}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A photo made smaller, as JPEG. */
        get: operations["photo"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rack": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The shop's tools; the starter rack until others were saved. */
        get: operations["rack"];
        /** Save the shop's tools. */
        put: operations["save_rack"];
        post?: never;
        /** Go back to the starter rack. */
        delete: operations["starter_rack"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A reading. */
        get: operations["reading"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/change/{earlier}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What changed between an earlier reading and this one. */
        get: operations["change"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/change/{earlier}/files/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A map of a change, under its name there. */
        get: operations["change_file"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/export/{form}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A reading in a form: `ply`, `stl`, `x3p`, `csv`, `png`, `svg`, or `zip` for another installation. */
        get: operations["export_reading"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/files/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A file of a reading: its maps (`deviation.npy`, `height.npy`, `sigma.npy`, `unread.npy`, `map.png`), or
         *     `photo`, the panel photo on which its spots lie.
         */
        get: operations["reading_file"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/gauge": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Join a depth measured by hand to a reading. What comes of it is a reading of its own, which from then on stands in
         *     the list for this one.
         */
        post: operations["add_gauge"];
        /** Take the last depth of a reading back: it is removed, and the reading before it stands again. */
        delete: operations["remove_gauge"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/line": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** How the body line runs that was drawn on a map: height, place sideways, sharpness. */
        get: operations["body_line"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/metal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What the metal of a reading holds, or how far the work on it has come. */
        get: operations["metal"];
        put?: never;
        /** Work out what the metal round a spot of a reading holds. */
        post: operations["know_metal"];
        /** Stop the work on a reading's metal; what was known before stays. */
        delete: operations["cancel_metal"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/metal/maps/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A map of what the metal holds: `stretch`, `tension`, `bent_outer`, `bent_inner`, `direction`, as NPY. */
        get: operations["metal_map"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/metal/try": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Try a move: what it lifts while held, what stays, the force, the paint, the glue, the bar. */
        post: operations["try_move"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/moves": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Note a move that was made after a reading. */
        post: operations["note_move"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/plan": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The plan of a reading, or how far the work on it has come. */
        get: operations["plan"];
        put?: never;
        /** Plan the repair from a reading. */
        post: operations["plan_repair"];
        /** Stop the work on a plan; an earlier one stays. */
        delete: operations["cancel_plan"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/take": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Enter the spots of a reading that lie beyond its finish limit as dents. Those taken before stay as they are. */
        post: operations["take"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/readings/{id}/tip": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Find the tip from two photos of the mirrored lines: the first before, the second while it is leaned on lightly. Places
         *     are in the reading's frame.
         */
        post: operations["find_tip"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsal-levels": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Levels to rehearse on. */
        get: operations["rehearsal_levels"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Ended rehearsals, newest first. */
        get: operations["rehearsals"];
        put?: never;
        /** Begin a rehearsal. */
        post: operations["begin_rehearsal"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A rehearsal as it stands. */
        get: operations["rehearsal"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/claims": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Say what the lines tell, before the work; answered with what is so, and how the lines look there. */
        put: operations["claim"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/end": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** End a rehearsal: the score. */
        post: operations["end_rehearsal"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/foretell": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** What a move would leave, at once and only about; to be shown until the move itself is solved. */
        post: operations["foretell_move"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/lean": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Lean a tip on: the lines show where it stands. Nothing of it stays. */
        post: operations["lean"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/moves": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Make a move. */
        post: operations["rehearse_move"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/steps/{step}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** How the panel stood after so many moves, for a replay. */
        get: operations["rehearsal_step"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/rehearsals/{id}/temperature": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Warm the panel, or let it cool. */
        put: operations["warm"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/sheets/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A sheet to print: tags for the panel, a board's corner tags, a line board, the camera sheet. */
        get: operations["sheet"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shop": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The shop. */
        get: operations["shop"];
        /** Change the shop. */
        put: operations["save_shop"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shop/billing": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** How the shop bills. */
        get: operations["billing"];
        /** Change how the shop bills. */
        put: operations["save_billing"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shop/hours": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The coefficients of the hours formula. */
        get: operations["hours"];
        /** Change the coefficients of the hours formula. */
        put: operations["save_hours"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/shop/hours/learned": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What was learned, and how well it has predicted. */
        get: operations["learned"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/tables/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** `jobs.csv`, `dents.csv` or `lines.csv`. */
        get: operations["table"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/tasks/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** How far a read has come. */
        get: operations["task"];
        put?: never;
        post?: never;
        /** Stop a read. Its photos stay; one that has ended stays as it is. */
        delete: operations["cancel_task"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/times/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Remove an entry. */
        delete: operations["remove_time"];
        options?: never;
        head?: never;
        /** Set an entry right. Times that were entered count as they stand. */
        patch: operations["change_time"];
        trace?: never;
    };
    "/api/times/{id}/stop": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Stop a clock. One that was stopped already stays as it is. */
        post: operations["stop_time"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/vin/{vin}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Check a VIN. */
        get: operations["vin"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/warming": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** How long to warm a spot, how long it stays warm, and what must not get so warm. */
        post: operations["warming"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        /**
         * @description How the back of the dent is reached.
         * @enum {string}
         */
        Access: "open" | "trim_off" | "braced" | "glue_only" | "none";
        /** @description How many times as long each access takes as an open one. */
        AccessTimes: {
            /** Format: double */
            braced: number;
            /** Format: double */
            glue_only: number;
            /** Format: double */
            none: number;
            /** Format: double */
            open: number;
            /** Format: double */
            trim_off: number;
        };
        /**
         * @description A way of moving metal.
         * @enum {string}
         */
        Act: "push" | "pull" | "tap" | "blend";
        /** @description Net beside what a conventional repair costs. */
        Against: {
            /** @description The conventional repair, without tax. */
            conventional: string;
            /** @description How much less this quote is; below zero if it is more. */
            saved: string;
            /** @description The same in %, to tenths; none where the conventional repair costs nothing. */
            saved_percent?: string | null;
        };
        /**
         * @description Whether a depth and the map tell the same where both do.
         * @enum {string}
         */
        Agreement: "agrees" | "near" | "disagrees";
        /** @description A tip against its aim. */
        AimFacts: {
            /** @description The aim, mm. */
            aim_mm: number[];
            /** @description The aim in the photo before, px. */
            at_px?: number[] | null;
            /**
             * Format: double
             * @description Direction from the aim to the tip, degrees counter-clockwise from x.
             */
            direction_deg: number;
            /**
             * Format: double
             * @description How far that is, mm.
             */
            distance_mm: number;
            /** @description From the aim to the tip, mm. */
            off_mm: number[];
            /**
             * Format: double
             * @description One-sigma of that distance, mm.
             */
            sigma_mm: number;
        };
        /** @description Areal figures of a surface, ISO 25178-2; heights in µm. */
        Areal: {
            /**
             * Format: double
             * @description Arithmetical mean height, µm.
             */
            sa_um: number;
            /**
             * Format: double
             * @description Root mean square gradient, mrad.
             */
            sdq_mrad: number;
            /**
             * Format: double
             * @description Kurtosis; 3 for a normal distribution.
             */
            sku: number;
            /**
             * Format: double
             * @description Tallest peak, µm.
             */
            sp_um: number;
            /**
             * Format: double
             * @description Root mean square height, µm.
             */
            sq_um: number;
            /**
             * Format: double
             * @description Skewness.
             */
            ssk: number;
            /**
             * Format: double
             * @description Deepest pit, µm.
             */
            sv_um: number;
            /**
             * Format: double
             * @description Peak and pit together, µm.
             */
            sz_um: number;
        };
        /**
         * @description What lies on the back.
         * @enum {string}
         */
        Backing: "air" | "foam" | "brace";
        /** @description What of a surface lies in one band of wavelengths. */
        Band: {
            /**
             * Format: double
             * @description Shortest wave, mm.
             */
            from_mm: number;
            /**
             * Format: double
             * @description How much of the band a reading of this step shows: all of it, or only from this wave on, mm; none where it shows
             *     nothing of it.
             */
            seen_from_mm?: number | null;
            /**
             * Format: double
             * @description Root mean square height of what is seen, µm.
             */
            sq_um?: number | null;
            /**
             * Format: double
             * @description Longest wave, mm.
             */
            to_mm: number;
        };
        /** @description A bar in the plane in which it is worked. The tip pushes along y. */
        Bar: {
            /**
             * Format: double
             * @description Young's modulus, MPa.
             */
            e_mpa: number;
            /** @description Lengths from the tip to the hand's end. */
            lengths: components["schemas"]["BarLength"][];
            /** @description Where the tip is, mm. */
            tip_mm: number[];
            /**
             * Format: double
             * @description Yield stress, MPa.
             */
            yield_mpa: number;
        };
        /** @description A bar over a fulcrum. */
        BarAsked: {
            /** @description The bar. */
            bar: components["schemas"]["Bar"];
            /**
             * Format: double
             * @description The fulcrum's place, mm.
             */
            fulcrum_x_mm: number;
        };
        /** @description A straight length of a bar. */
        BarLength: {
            /** @description Its section. */
            section: components["schemas"]["BarSection"];
            /** @description Where it ends, mm, in the plane the bar is bent in; it starts where the one before ended. */
            to_mm: number[];
        };
        /** @description Cross-section of a bar. */
        BarSection: {
            /**
             * Format: double
             * @description Diameter, mm.
             */
            diameter_mm: number;
            /** @enum {string} */
            kind: "round";
        } | {
            /**
             * Format: double
             * @description Along the bending, mm.
             */
            height_mm: number;
            /** @enum {string} */
            kind: "flat";
            /**
             * Format: double
             * @description Across the bending, mm.
             */
            width_mm: number;
        };
        /** @description What is behind a damage. */
        BehindJson: {
            /**
             * Format: uuid
             * @description The reading over which it was drawn; places are in its frame.
             */
            reading: string;
            /** @description The drawing. */
            side: components["schemas"]["InnerSide"];
        };
        /**
         * @description Kinds of things behind a panel.
         * @enum {string}
         */
        BehindKind: "wiring" | "airbag" | "glass" | "battery" | "solid";
        /** @description How the shop bills. */
        Billing: {
            /**
             * @description Account to pay to, best an IBAN.
             * @default
             */
            account: string;
            /**
             * @description BIC of its bank.
             * @default
             */
            bank: string;
            /**
             * @description Country of the shop, ISO 3166-1 alpha-2; its pack gives texts, tax and paper.
             * @default
             */
            country: string;
            /**
             * Format: int32
             * @description Days in which an invoice is to be paid.
             * @default 14
             */
            due_days: number;
            /**
             * @description Why the shop's work carries no tax, such as a small business; empty where it does.
             * @default
             */
            exempt_reason: string;
            /**
             * @description Number in a register of companies.
             * @default
             */
            register: string;
            /**
             * @description Local tax number.
             * @default
             */
            tax_number: string;
            /**
             * @description VAT identifier, with the country's letters.
             * @default
             */
            vat_id: string;
        };
        /** @description Why nothing reaches. */
        Blocked: {
            /** @enum {string} */
            why: "off_panel";
        } | {
            /** @enum {string} */
            why: "fold";
        } | {
            /** @enum {string} */
            why: "bonded";
        } | {
            /** @enum {string} */
            why: "no_opening";
        } | {
            /** @description Which. */
            name: string;
            /** @enum {string} */
            why: "wall";
        } | {
            /** @description Which. */
            name: string;
            /** @enum {string} */
            why: "brace";
        } | {
            /** @description What. */
            kind: components["schemas"]["BehindKind"];
            /** @enum {string} */
            why: "behind";
        } | {
            /** @enum {string} */
            why: "skin";
        } | {
            /** @enum {string} */
            why: "no_fulcrum";
        };
        /** @description A brace. */
        Brace: {
            /** @description Whether a bar may be levered over it. */
            bears: boolean;
            /** @description Middle line, mm. */
            line: number[][];
            /** @description What it is. */
            name: string;
            /**
             * Format: double
             * @description Half of what it measures across, mm: it is taken as round.
             */
            radius: number;
        };
        /** @description What became of the predictions. */
        Calibration: {
            /** @description For 10, 20 … 90 %: the share of jobs that came below that quantile. */
            below: components["schemas"]["Level"][];
            /** @description Where that share lies in 95 of 100 shops whose predictions are right, by chance alone. */
            by_chance: number[];
            /**
             * Format: double
             * @description Share of them that came between low and high; 0.8 is right.
             */
            inside: number;
            /** @description How many jobs were predicted. */
            jobs: number;
            /**
             * Format: double
             * @description Worked over middle, on average (geometric): over 1, the work took longer than said.
             */
            lean: number;
            /**
             * Format: double
             * @description Half of the jobs missed the middle by less than this factor.
             */
            usual_miss: number;
        };
        /** @description What moves came to. */
        CameOfJson: {
            /** @description Largest residual foretold and its one-sigma doubt, mm. */
            foretold_mm: number[];
            /**
             * Format: double
             * @description Largest residual found, mm.
             */
            found_mm: number;
            /** @description After. */
            hand_after: number[][];
            /** @description Gain of the hand and share of the sheet, each with one sigma, before. */
            hand_before: number[][];
            /** @description Move by move; places in this reading's frame. */
            moves: components["schemas"]["MoveOutcomeJson"][];
        };
        /** @description The reading camera as solved. */
        CameraFacts: {
            /** Format: double */
            board_median_mm: number;
            /** @description Day the lens was calibrated on, where it was. */
            calibrated?: string | null;
            /** Format: double */
            corner_rms_px: number;
            /** Format: double */
            focal_px: number;
            /** Format: double */
            gamma: number;
            /** Format: double */
            k1: number;
            source: string;
        };
        /** @description A camera that was calibrated: one phone at one zoom. */
        CameraJson: {
            created: string;
            /**
             * Format: int32
             * @description 35 mm equivalent focal length, mm.
             */
            focal_35mm: number;
            /**
             * Format: double
             * @description One-sigma of it, relative.
             */
            focal_doubt: number;
            /**
             * Format: double
             * @description Focal length, mean of across and down, px.
             */
            focal_px: number;
            /** Format: int32 */
            height_px: number;
            /** Format: uuid */
            id: string;
            /** @description Maker and model. */
            phone: string;
            photos: number;
            /**
             * Format: double
             * @description What is left of the tags' corners, px.
             */
            rms_px: number;
            /** Format: int32 */
            width_px: number;
        };
        /**
         * @description Whether it can be done.
         * @enum {string}
         */
        Can: "yes" | "push_to_paint" | "no";
        /** @description The answer with its reasons. */
        CanBeDone: {
            /** @description The answer. */
            can: components["schemas"]["Can"];
            /** @description Why not, or what stays doubtful. */
            reasons: components["schemas"]["PlanReason"][];
        };
        /** @description A consumer's right to cancel what was agreed away from the shop. */
        CancellationRight: {
            /** @description Business days (true) or days of the calendar. */
            business_days: boolean;
            /**
             * Format: int32
             * @description Days to do so.
             */
            days: number;
            /** @description Where it comes from. */
            source: string;
        };
        /** @description A folder of photos that readings are made from. */
        CaptureJson: {
            created: string;
            /** @description How many files it has. */
            files: number;
            /** Format: uuid */
            id: string;
            readings: components["schemas"]["ReadingEntryJson"][];
            /**
             * Format: uuid
             * @description The last task that read it.
             */
            task_id: string | null;
        };
        /** @description A car. */
        CarJson: {
            /** @default  */
            colour: string;
            /**
             * @description Whether it carries more than 60 V DC; none where nobody has looked.
             * @default null
             */
            high_voltage: boolean | null;
            /** @default  */
            make: string;
            /**
             * @description Metal of the panels that somebody has looked at.
             * @default {}
             */
            metals: {
                [key: string]: components["schemas"]["Metal"];
            };
            /** @default  */
            model: string;
            /**
             * Format: int32
             * @default null
             */
            odometer_km: number | null;
            /**
             * @description What is known of the paint.
             * @default
             */
            paint: string;
            /** @default  */
            plate: string;
            /**
             * @description The number on the car, whether or not it is a VIN.
             * @default null
             */
            vin: string | null;
            /**
             * Format: int32
             * @description Year of building.
             * @default null
             */
            year: number | null;
        };
        /** @description A photo of the checklist. */
        CarPhotoJson: {
            /** @description Hash of the photo. */
            hash: string;
            shot: components["schemas"]["Shot"];
        };
        /**
         * @description A caution that applies; what is to be done is what the maker, the local code and licensed people say.
         * @enum {string}
         */
        Caution: "airbag" | "high_voltage" | "wiring" | "glass" | "glue" | "tapping" | "not_drawn" | "corrosion";
        /** @description A caution by its code; the words are the app's and the report's. */
        CautionRow: {
            code: string;
            panel: components["schemas"]["Panel"] | null;
        };
        /** @description What changed between two readings. Places in the later reading's frame. */
        ChangeFile: {
            /** @description What is left now, on what both readings show. */
            after: components["schemas"]["Residual"];
            /** @description What was left before, on what both readings show. */
            before: components["schemas"]["Residual"];
            /**
             * Format: double
             * @description Share of the later reading's cells that the earlier one read too.
             */
            common_fraction: number;
            /** @description Grid of the maps, the later reading's. */
            grid: components["schemas"]["GridFacts"];
            /** @description How the earlier reading lies on the later one. */
            laying: components["schemas"]["Laying"];
            /** @description Volume that went down. */
            lowered: components["schemas"]["Volume"];
            /** @description File names of the maps. */
            maps: components["schemas"]["ChangeMaps"];
            /** @description Volume that came up. */
            raised: components["schemas"]["Volume"];
            /** @description Version of the program. */
            version: string;
            /** @description Areas that changed, the most changed first. */
            worked: components["schemas"]["Worked"][];
        };
        /** @description Names of the maps of a change. */
        ChangeMaps: {
            /** @description The earlier deviation laid on the later grid, mm. */
            before: string;
            /** @description Later less earlier deviation, mm. */
            change: string;
            /** @description Its one-sigma doubt, mm. */
            sigma: string;
        };
        /** @description Change of the panel's height. */
        ChangedJson: {
            /** @description Row by row, mm; none where there is no answer. */
            change_mm: number[] | null;
        };
        /** @description How an R&I line is charged. */
        Charge: {
            /** @description Hours, times the rate. */
            hours: string;
        } | {
            /** @description A fixed amount. */
            amount: string;
        };
        /** @description What a learner read off the lines. */
        Claim: {
            /** @description What stands there. */
            height: components["schemas"]["ClaimedHeight"];
            /**
             * Format: double
             * @description Where, x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Where, y, mm.
             */
            y_mm: number;
        };
        /**
         * @description Low or high.
         * @enum {string}
         */
        ClaimedHeight: "low" | "high";
        /** @description What became of one claim. */
        ClaimedJson: {
            claim: components["schemas"]["Claim"];
            right: boolean;
            /** @description Whether they are upside down there. */
            turned: boolean;
            /**
             * Format: double
             * @description Width of the lines there against lines elsewhere.
             */
            width: number;
        };
        /** @description What was read off the lines, and how the learner stood. */
        ClaimsJson: {
            /**
             * Format: double
             * @description Which way is across the lines, radians from the panel's x.
             */
            across_rad: number;
            /**
             * Format: double
             * @description From the panel to the board, mm.
             */
            board_mm: number;
            claims: components["schemas"]["Claim"][];
            /**
             * Format: double
             * @description From the panel to the eye, mm.
             */
            eye_mm: number;
        };
        /** @description Two values for one field. */
        Clash: {
            /** @description Which field. */
            field: string;
            /** @description What this device wanted. */
            mine: Record<string, never>;
            /** @description What the record holds, which stays until somebody chooses. */
            theirs: Record<string, never>;
        };
        /** @description One coefficient as it started and as it stands. */
        Coefficient: {
            /**
             * Format: double
             * @description One time in ten it is more than this.
             */
            high: number;
            /**
             * Format: double
             * @description One time in ten it is less than this.
             */
            low: number;
            /** @description Its name, as in the settings: `base_hours`, `area_power`, `kind.crease`. */
            name: string;
            /**
             * Format: double
             * @description As it stands.
             */
            now: number;
            /**
             * Format: double
             * @description As it started: hours, a power, or how many times as long.
             */
            start: number;
        };
        /** @description A coin to measure dents with. */
        Coin: {
            /** @description Diameter, mm. */
            mm: string;
            /** @description Its name. */
            name: string;
        };
        /** @description Paint and temperature. */
        Conditions: {
            /** @description What is known of the paint. */
            paint?: components["schemas"]["Paint"];
            /**
             * Format: double
             * @description Temperature of the panels while they are worked on, °C; none where nobody measured it, which
             *     counts as warm enough.
             */
            panel_c?: number | null;
        };
        /** @description A panel that cools. */
        CoolingAskedJson: {
            /**
             * Format: double
             * @description As it is now, °C.
             */
            from_c: number;
            /** @description Name of the metal on file. */
            metal: string;
            /**
             * Format: double
             * @description Air about it, °C.
             */
            room_c: number;
            /**
             * Format: double
             * @description Thickness, mm; none for the metal's likely one.
             */
            thickness_mm?: number | null;
            /**
             * Format: double
             * @description As it shall not fall below, °C.
             */
            to_c: number;
        };
        /** @description How long a panel stays warm enough. */
        CoolingJson: {
            /**
             * Format: double
             * @description Likely, s.
             */
            likely: number | null;
            /**
             * Format: double
             * @description Soonest, s; none where it does not fall so far within the hour.
             */
            seconds: number | null;
        };
        /** @description A country's pack. Every one says of itself that it is no legal advice. */
        Country: {
            /** @description Right to cancel. */
            cancellation: components["schemas"]["CancellationRight"];
            /** @description Smallest step that cash is paid in. */
            cash_step: string;
            /** @description Day its values were last looked at. */
            checked: string;
            /** @description ISO 3166-1 alpha-2. */
            code: string;
            /** @description Coins to measure with, smallest first. */
            coins: components["schemas"]["Coin"][];
            /** @description Where the coins' sizes come from. */
            coins_source: string;
            /** @description ISO 4217. */
            currency: string;
            /** @description Whether e-invoices by EN 16931 are usual. */
            e_invoice: boolean;
            /** @description How long invoices are kept. */
            keep: components["schemas"]["KeepingTime"];
            /** @description Lines that belong on papers, by language; `en` is always there. */
            lines: {
                [key: string]: components["schemas"]["Lines"];
            };
            /** @description Its name, in its own language. */
            name: string;
            /** @description That it is no legal advice. */
            notice: string;
            /** @description Size of the sheet. */
            paper: components["schemas"]["Paper"];
            /** @description Its taxes. */
            tax: components["schemas"]["CountryTaxes"];
            /** @description Workmanship. */
            warranty: components["schemas"]["WarrantyTime"];
        };
        /** @description A rate of tax. */
        CountryRate: {
            /** @description Its name in the pack, such as `standard`. */
            code: string;
            /** @description %. */
            percent: string;
            /** @description Since when, where that is known. */
            since?: string | null;
            /** @description Where it comes from, or that it is from memory. */
            source: string;
        };
        /** @description Taxes on sales. */
        CountryTaxes: {
            /** @description What the tax is called, by language. */
            name: {
                [key: string]: string;
            };
            /** @description Rates, the usual one first. */
            rates: components["schemas"]["CountryRate"][];
            /** @description Where tax is rounded: `invoice`, once for each rate, or `line`. */
            rounding: string;
        };
        /** @description A customer. Everything may be empty: a car is taken in first, its owner's address comes later. */
        Customer: {
            /** @description Street and town. */
            address: string;
            /** @description Mail address. */
            email: string;
            /** @description Name. */
            name: string;
            /** @description Telephone. */
            phone: string;
        };
        /** @description What changes; a field that is left out stays as it is. */
        DamageChangeJson: {
            note?: string | null;
            panel?: components["schemas"]["Panel"] | null;
            /** Format: double */
            x?: number | null;
            /** Format: double */
            y?: number | null;
        };
        /** @description A damaged area of a panel. */
        DamageJson: {
            captures: components["schemas"]["CaptureJson"][];
            dents: components["schemas"]["DentEntryJson"][];
            /** Format: uuid */
            id: string;
            note: string;
            panel: components["schemas"]["Panel"];
            /** @description Hashes of its photos. */
            photos: string[];
            /**
             * Format: double
             * @description Place on the panel as it is drawn, from the left, 0 to 1.
             */
            x: number;
            /**
             * Format: double
             * @description From the top.
             */
            y: number;
        };
        /** @description One dent, or `count` dents alike. */
        Dent: {
            /** @description How its back is reached. */
            access: components["schemas"]["Access"];
            /**
             * Format: int32
             * @description How many dents alike this stands for, 1 or more.
             */
            count?: number;
            /**
             * Format: double
             * @description Depth of a low, or height of a high, mm; its sign does not matter.
             */
            depth_mm: number;
            /** @description What sort of damage it is. */
            kind: components["schemas"]["Kind"];
            /**
             * Format: double
             * @description The longer way across, mm, over zero.
             */
            length_mm: number;
            /** @description The metal of the panel. */
            metal: components["schemas"]["Metal"];
            /** @description Where on the panel it lies. */
            place: components["schemas"]["Place"];
            /**
             * Format: double
             * @description Depth over half width; worked out from the sizes where it was not measured.
             */
            sharpness?: number | null;
            /**
             * Format: double
             * @description The shorter way across, mm, over zero.
             */
            width_mm: number;
        };
        /** @description A dent, or several alike, in the record. */
        DentEntryJson: {
            /** @description Whether its depth is a lower bound: part of it was too steep to read. */
            at_least: boolean;
            dent: components["schemas"]["Dent"];
            /** Format: uuid */
            id: string;
            source: components["schemas"]["SourceJson"];
        };
        /** @description Hours of a dent line. */
        DentHours: {
            hours: components["schemas"]["Hours"];
            /** @description The panel's code. */
            what: string;
        };
        /** @description A rule of the trade that the plan does not follow, and why. */
        Departure: {
            /**
             * Format: double
             * @description Largest residual after the round as planned and as the trade would order it, mm.
             */
            planned_mm: number;
            /** @enum {string} */
            rule: "crowns_first";
            /**
             * Format: double
             * @description As the trade would.
             */
            trade_mm: number;
        } | {
            /** @description Place, mm. */
            at_mm: number[];
            /**
             * Format: double
             * @description What the round's moves change there, mm.
             */
            changes_mm: number;
            /**
             * Format: double
             * @description Height, mm.
             */
            height_mm: number;
            /** @enum {string} */
            rule: "crown_left";
        } | {
            /**
             * Format: double
             * @description Share of its depth by which the first is brought up.
             */
            first_share: number;
            /** @enum {string} */
            rule: "tied_together";
            /**
             * Format: double
             * @description The second's place moves by this share of what the first comes up.
             */
            tie: number;
        };
        /** @description What is taken off the sum of all lines, before tax. */
        Discount: {
            /** @description So many %, 0 to 100. */
            percent: string;
        } | {
            /** @description An amount, at most the sum of the lines. */
            amount: string;
        };
        /** @description Shares of the variance of the logarithm of hours; together 1 (all 0 where there are no dents). */
        Doubt: {
            /**
             * Format: double
             * @description By what the car and the day share.
             */
            day: number;
            /**
             * Format: double
             * @description By the dents' own spread: one goes better, the other worse.
             */
            dents: number;
            /**
             * Format: double
             * @description By not knowing the shop's coefficients: this part shrinks with every finished job.
             */
            shop: number;
        };
        /** @description A number and its doubt, about two standard deviations. */
        Doubtful: {
            /** Format: double */
            doubt: number;
            /** Format: double */
            value: number;
        };
        /** @description An edit of one field. */
        Edit: {
            /** @description The value that the device last knew. */
            base: Record<string, never>;
            /** @description Which: a JSON pointer (RFC 6901) into the record, such as `/customer/phone`. */
            field: string;
            /** @description What it shall be. */
            to: Record<string, never>;
        };
        /** @description Edits in the order in which they were made. */
        EditsJson: {
            edits: components["schemas"]["Edit"][];
        };
        /**
         * @description How an entry stands.
         * @enum {string}
         */
        EntryState: "running" | "counted" | "backwards" | "left_running";
        /** @description A job of the customer. */
        ErasureJob: {
            car_title: string;
            /** Format: uuid */
            id: string;
            /** @description Papers with a number, which are kept. */
            kept: components["schemas"]["KeptPaper"][];
            number: string;
            /** @description Papers without a number, which go. */
            papers: number;
            photos: number;
            plate: string;
            readings: number;
            /** @description Whether phone, mail or address say that it is the same person. */
            same: boolean;
            stage: components["schemas"]["Stage"];
        };
        /** @description Which jobs lose their customer's data. */
        ErasureOrder: {
            jobs: string[];
        };
        /** @description When it will be done. */
        ErasureOrdered: {
            /** Format: date-time */
            due: string;
        };
        /** @description What the erasure of a customer's data takes, and what it leaves. */
        ErasurePlan: {
            customer: components["schemas"]["Customer"];
            /**
             * Format: date-time
             * @description When it was done.
             */
            done: string | null;
            /**
             * Format: date-time
             * @description When it will be done, where it was ordered for the asked job.
             */
            due: string | null;
            /** @description Jobs under this name, the asked one first. */
            jobs: components["schemas"]["ErasureJob"][];
            /** @description Where the years come from. */
            keep_source: string;
            /**
             * Format: int32
             * @description Whole years after the year of issue in which numbered papers are kept.
             */
            keep_years: number;
        };
        /** @description One factor of the likely hours. */
        Factor: {
            /**
             * @description `base`, `area`, `depth`, `sharpness`, `kind`, `metal`, `access`, `place`, `paint`, `cold` or
             *     `count`.
             */
            name: string;
            /**
             * Format: double
             * @description Times (for `base`: hours).
             */
            times: number;
        };
        /** @description A form with files. */
        FilesForm: {
            /** @description The files, each under this name. */
            files: string[];
        };
        /** @description Verdict with its reason in plain words. */
        Finish: {
            /**
             * Format: double
             * @description The limit of depth, mm.
             */
            limit_mm: number;
            /**
             * Format: double
             * @description Chance that the place most likely over the limit is over it.
             */
            over?: number | null;
            /** @description Why. */
            reason: string;
            /**
             * Format: double
             * @description The scale of both, mm.
             */
            scale_mm?: number | null;
            settle?: components["schemas"]["Settle"] | null;
            /**
             * Format: double
             * @description The limit of slope, mm per mm; none in readings made before it was judged.
             */
            slope_limit?: number | null;
            /** @description The answer. */
            verdict: components["schemas"]["Verdict"];
            /**
             * Format: double
             * @description Chance that nothing that was read is over the limit, 0 to 1.
             */
            within?: number | null;
        };
        /** @description A hole whose metal was too steep to read. */
        Fold: {
            /**
             * Format: double
             * @description Diameter of a circle of its area, mm.
             */
            across_mm: number;
            /**
             * Format: double
             * @description Its area, mm².
             */
            area_mm2: number;
            /**
             * Format: double
             * @description It goes at least this far, mm, negative for a low; none where the rim does not tell.
             */
            at_least_mm?: number | null;
            kind?: components["schemas"]["SpotKind"] | null;
            /**
             * Format: double
             * @description Middle of the hole, panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Middle of the hole, panel y, mm.
             */
            y_mm: number;
        };
        /** @description A pop. */
        Forced: {
            /** @description Force, N. */
            force_n: components["schemas"]["Doubtful"];
            /** @description Whether it then stays in its other shape. */
            stays: boolean;
            /**
             * Format: double
             * @description Travel before it, mm.
             */
            travel_mm: number;
        };
        /** @description A finished job beside what was said before it was learned. */
        Foretold: {
            /**
             * Format: double
             * @description One time in ten it was said to take more than this, h.
             */
            high: number;
            /**
             * Format: double
             * @description One time in ten it was said to take less than this, h.
             */
            low: number;
            /**
             * Format: double
             * @description As often less as more, h.
             */
            middle: number;
            /**
             * Format: double
             * @description Share of what was thought possible that lay below what was worked, 0 to 1.
             */
            rank: number;
            /** @description The job's name. */
            what: string;
            /**
             * Format: double
             * @description What was worked, h.
             */
            worked: number;
        };
        /** @description A photo, and whether it was used. */
        FrameFacts: {
            file: string;
            note: string;
            ok: boolean;
            role: string;
        };
        /** @description What the bar is worked over. */
        Fulcrum: {
            /** @description Where, mm. */
            at: number[];
            /** @enum {string} */
            over: "rim";
            /**
             * Format: double
             * @description What the gap is packed with, mm.
             */
            packing: number;
        } | {
            /** @description Where on the bar, mm. */
            at: number[];
            /** @description Which. */
            name: string;
            /** @enum {string} */
            over: "brace";
            /**
             * Format: double
             * @description What the gap is packed with, mm.
             */
            packing: number;
        } | {
            /** @enum {string} */
            over: "end_on";
        };
        /** @description A depth that was measured with a gauge or a straightedge and feeler. */
        GaugeAsked: {
            /**
             * Format: double
             * @description How its feet stood, degrees from panel x toward y: 0 side by side, 90 one above the other.
             */
            angle_deg?: number;
            /**
             * Format: double
             * @description Its doubt, two sigma, mm.
             */
            doubt_mm?: number;
            /**
             * Format: double
             * @description What it showed, mm; negative for a low.
             */
            height_mm: number;
            /**
             * Format: double
             * @description Distance between its feet, mm, zeroed on a flat plate; 0 for a depth against the sound metal all round.
             */
            span_mm?: number;
            /**
             * Format: double
             * @description Where its tip stood, panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Panel y, mm.
             */
            y_mm: number;
        };
        /** @description A depth in a reading. */
        GaugeFacts: components["schemas"]["GaugeAsked"] & {
            /**
             * Format: double
             * @description What it comes to against the intended shape, mm; negative for a low.
             */
            against_shape_mm: number;
            agrees?: components["schemas"]["Agreement"] | null;
            /**
             * Format: double
             * @description Area of the hole that was filled in with it, mm².
             */
            filled_mm2?: number | null;
            /**
             * Format: double
             * @description The map there, mm, where it was read.
             */
            map_mm?: number | null;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm.
             */
            map_sigma_mm?: number | null;
            /**
             * Format: double
             * @description One-sigma doubt of that, mm.
             */
            sigma_mm: number;
        };
        /** @description A pull judged. */
        GlueHold: {
            /** @description What lets go first. */
            first: components["schemas"]["LetsGo"];
            /** @description Force at which the glue lets go: lowest and likely, N. */
            holds_n: number[];
            /**
             * Format: double
             * @description How far the tab's rim bends away under the pull, mm.
             */
            rim_bends_mm: number;
        };
        /** @description Grid of the maps; row 0 is `y0_mm`, rows go up. */
        GridFacts: {
            nx: number;
            ny: number;
            /** Format: double */
            step_mm: number;
            /** Format: double */
            x0_mm: number;
            /** Format: double */
            y0_mm: number;
        };
        /** @description A hail table in the list. */
        HailTableRow: {
            created: string;
            /** Format: uuid */
            id: string;
            name: string;
            /** @description How many panels have rows of their own. */
            panels: number;
            per: components["schemas"]["PricePer"];
            rows: number;
            /** @description Diameters of its gauge circles, mm; none where the last is open at the top. */
            sizes_mm: (number | null)[];
        };
        /**
         * @description How hard what touches is.
         * @enum {string}
         */
        Hardness: "soft" | "medium" | "hard";
        /** @description A limit from what is on or behind the sheet. */
        HeatLimit: {
            /**
             * Format: double
             * @description °C.
             */
            limit_c: number;
            /** @description Name by which it is asked for. */
            name: string;
            /** @description What it protects. */
            says: string;
            /** @description Source, or "common practice". */
            source: string;
        };
        /** @description Hours of work with their doubt. */
        Hours: {
            /** @description What the likely hours are made of: their product. Empty for a sum over several lines. */
            because: components["schemas"]["Factor"][];
            /** @description Where the doubt comes from. */
            doubt?: components["schemas"]["Doubt"];
            /**
             * Format: double
             * @description One time in ten it takes more than this, h.
             */
            high: number;
            /**
             * Format: double
             * @description The expectation, h.
             */
            likely: number;
            /**
             * Format: double
             * @description One time in ten it takes less than this, h (with the shipped `spread_z`).
             */
            low: number;
            /**
             * Format: double
             * @description As often less as more, h.
             */
            middle?: number;
        };
        /**
         * @description Coefficients of [`hours`](crate::hours()) before the shop's own jobs were learned, and how far each
         *     may be off. The formula and each one's ground: `hours.toml`.
         */
        HoursSettings: {
            /** @description Times for the access. */
            access: components["schemas"]["AccessTimes"];
            /**
             * Format: double
             * @description Power of the area; raise it where wide dents take longer than quoted.
             */
            area_power: number;
            /**
             * Format: double
             * @description Area of the dent compared with, mm².
             */
            area_ref_mm2: number;
            /**
             * Format: double
             * @description Expected hours of the dent compared with, h.
             */
            base_hours: number;
            /**
             * Format: double
             * @description Times for every 10 °C that the panel is colder than `cold_under_c`.
             */
            cold_times?: number;
            /**
             * Format: double
             * @description Temperature from which a panel is warm enough, °C.
             */
            cold_under_c?: number;
            /**
             * Format: double
             * @description Power of the count, 0 to 1; below 1 many alike cost less each.
             */
            count_power: number;
            /**
             * Format: double
             * @description Power of the depth; raise it where deep dents take longer than quoted.
             */
            depth_power: number;
            /**
             * Format: double
             * @description Depth of the dent compared with, mm.
             */
            depth_ref_mm: number;
            /** @description Times for the kind. */
            kind: components["schemas"]["KindTimes"];
            /** @description Times for the metal. */
            metal: components["schemas"]["MetalTimes"];
            /** @description Times for the paint. */
            paint?: components["schemas"]["PaintTimes"];
            /** @description Times for the place. */
            place: components["schemas"]["PlaceTimes"];
            /**
             * Format: double
             * @description Power of the sharpness; at most `area_power`, so that wider never costs less.
             */
            sharpness_power: number;
            /**
             * Format: double
             * @description Depth over half width of the dent compared with.
             */
            sharpness_ref: number;
            /**
             * Format: double
             * @description Spread of one dent's hours (standard deviation of their logarithm).
             */
            spread_own: number;
            /**
             * Format: double
             * @description Spread that all dents of a car share (standard deviation of the logarithm).
             */
            spread_shared: number;
            /**
             * Format: double
             * @description How many spreads low and high lie from the middle; 1.2816 for 10 % and 90 %.
             */
            spread_z: number;
            /** @description How far the numbers above may be off for a shop. */
            width?: components["schemas"]["Widths"];
        };
        /** @description What came in with an archive. */
        ImportedJson: {
            /**
             * Format: int64
             * @description Jobs that are new here.
             */
            jobs: number;
            /**
             * Format: int64
             * @description Jobs that were here already and stayed as they are.
             */
            jobs_there: number;
            /** @description Jobs whose number was taken here, with the number they got. */
            renumbered: components["schemas"]["Renumbered"][];
        };
        /** @description What is behind one panel. */
        InnerSide: {
            /** @description Things to keep away from. */
            behind?: components["schemas"]["ThingBehind"][];
            /** @description Where a brace or mat is glued to the panel, seen from outside. */
            bonded?: components["schemas"]["Outline"][];
            /** @description Braces, bows, beams. */
            braces?: components["schemas"]["Brace"][];
            /** @description Panel curvature `z = ½(k₀x² + 2k₁xy + k₂y²)`, 1/mm. */
            curvature?: number[];
            /** @description The panel's own outline seen from outside, mm; its line is the folded edge. */
            outline: components["schemas"]["Outline"];
            /** @description Walls with their openings: inner sheet, closing panels, lamp pocket. */
            walls: components["schemas"]["Wall"][];
        };
        /** @description What to issue. */
        Issue: {
            /** @description The buyer's VAT identifier, where the buyer is a business (invoice). */
            buyer_vat_id?: string;
            /**
             * Format: uuid
             * @description The invoice that a credit note or receipt is about; the job's last where none is named.
             */
            follows?: string | null;
            /** @description Which paper. */
            kind: components["schemas"]["PaperKind"];
            language?: components["schemas"]["Language"] | null;
            /** @description How it was paid, UNTDID 4461: `10` cash, `48` card, `58` transfer. */
            means?: string | null;
            /** @description Amount paid; all that is open where none is named (receipt). */
            paid?: string | null;
            /** @description Net amount given back; the whole invoice where none is named (credit note). */
            part?: string | null;
            /** @description Why (supplement, credit note). */
            reason?: string;
            signature?: components["schemas"]["Signature"] | null;
        };
        /** @description What changes; a field that is left out stays as it is. */
        JobChange: {
            car?: components["schemas"]["CarJson"] | null;
            customer?: components["schemas"]["Customer"] | null;
            notes?: string | null;
            place?: string | null;
            /**
             * Format: date
             * @description `null` takes the promise back.
             */
            promised?: string | null;
            /** @description `null` for any time of the day. */
            promised_time?: string | null;
            stage?: components["schemas"]["Stage"] | null;
        };
        /** @description A job with everything below it. */
        JobJson: {
            car: components["schemas"]["CarJson"];
            customer: components["schemas"]["Customer"];
            damages: components["schemas"]["DamageJson"][];
            /** Format: uuid */
            id: string;
            notes: string;
            /** @description Its number, as people say it. */
            number: string;
            /** @description Where the car stands. */
            place: string;
            /**
             * Format: date
             * @description The day it was promised for.
             */
            promised: string | null;
            /** @description At what time of that day; none for any. */
            promised_time: string | null;
            stage: components["schemas"]["Stage"];
        };
        /** @description A done job in a technician's row. */
        JobPay: {
            /** @description Net of its labour. */
            labour: string;
            /** @description Its number. */
            number: string;
            /** @description What this technician gets for it; none unless by share. */
            pay: string | null;
            /**
             * Format: int64
             * @description Time of this technician on it, s.
             */
            seconds: number;
        };
        /** @description A job in the list. */
        JobRow: {
            car_title: string;
            /** @description Currency of the total. */
            currency: string | null;
            customer_name: string;
            damage_count: number;
            /** @description Total of its quote with tax; none where nothing was entered yet. */
            gross: string | null;
            /** Format: uuid */
            id: string;
            number: string;
            /** @description Where the car stands. */
            place: string;
            plate: string;
            /** Format: date */
            promised: string | null;
            /** @description At what time of that day; none for any. */
            promised_time: string | null;
            /** @description Whether somebody's clock runs on it. */
            running: boolean;
            stage: components["schemas"]["Stage"];
        };
        /** @description How long tax law wants invoices kept. */
        KeepingTime: {
            /** @description Where it comes from. */
            source: string;
            /**
             * Format: int32
             * @description Whole years after the one in which they were issued.
             */
            years: number;
        };
        /** @description A paper that is kept. */
        KeptPaper: {
            number: string;
            /**
             * Format: date
             * @description Last day on which it is kept.
             */
            until: string;
        };
        /**
         * @description What sort of damage a dent is.
         * @enum {string}
         */
        Kind: "round" | "hail" | "soft" | "sharp" | "crease" | "high";
        /** @description How many times as long each kind takes as a round ding of its size and depth. */
        KindTimes: {
            /** Format: double */
            crease: number;
            /** Format: double */
            hail: number;
            /** Format: double */
            high: number;
            /** Format: double */
            round: number;
            /** Format: double */
            sharp: number;
            /** Format: double */
            soft: number;
        };
        /** @description What told how two readings lie on each other. */
        LaidBy: {
            /** @description Tags that stayed where they were. */
            tags: {
                /** @description How many. */
                count: number;
                /** @description Tags with the same number that lie elsewhere now. */
                moved: number;
            };
        } | {
            /** @description The panel's own texture and shape. */
            shape: {
                /**
                 * Format: double
                 * @description Correlation of what both readings show, 0 to 1.
                 */
                likeness: number;
            };
        };
        /**
         * @description Language of app and papers.
         * @enum {string}
         */
        Language: "en" | "de";
        /** @description The move from the earlier reading's frame to the later one's: turned about the origin, then shifted. */
        Laying: {
            /** @description What told it. */
            by: components["schemas"]["LaidBy"];
            /**
             * Format: double
             * @description Shift along x, mm.
             */
            dx_mm: number;
            /**
             * Format: double
             * @description Shift along y, mm.
             */
            dy_mm: number;
            /**
             * Format: double
             * @description Middle of what told it, later frame, mm.
             */
            middle_x_mm: number;
            /**
             * Format: double
             * @description Middle of what told it, later frame, mm.
             */
            middle_y_mm: number;
            /**
             * Format: double
             * @description One-sigma of the shift in that middle, mm each way.
             */
            place_sigma_mm: number;
            /**
             * Format: double
             * @description Turn from x toward y, rad.
             */
            turn_rad: number;
            /**
             * Format: double
             * @description One-sigma of the turn, rad.
             */
            turn_sigma_rad: number;
        };
        /** @description A tip that leans on the sheet. */
        LeanJson: {
            kind: components["schemas"]["MoveKind"];
            /**
             * Format: double
             * @description Lift of the place, mm.
             */
            lift_mm: number;
            tip: components["schemas"]["Tip"];
            /** Format: double */
            x_mm: number;
            /** Format: double */
            y_mm: number;
        };
        /** @description What is known of the shop's hours. */
        LearnedAnswer: {
            calibration: components["schemas"]["Calibration"] | null;
            coefficients: components["schemas"]["Coefficient"][];
            /** @description The last jobs, newest first, with what was said of each before it was learned. */
            foretold: components["schemas"]["Foretold"][];
            /**
             * Format: int32
             * @description How many finished jobs it was learned from.
             */
            jobs: number;
            /**
             * Format: double
             * @description Spread of one dent's hours (standard deviation of their logarithm), its own.
             */
            spread_own: number;
            /**
             * Format: double
             * @description Spread that all dents of a car share.
             */
            spread_shared: number;
        };
        /**
         * @description Unit of length.
         * @enum {string}
         */
        LengthUnit: "mm" | "inch";
        /**
         * @description What lets go first.
         * @enum {string}
         */
        LetsGo: "metal" | "either" | "glue";
        /** @description One point of the calibration plot; on the diagonal it is right. */
        Level: {
            /**
             * Format: double
             * @description Share that did.
             */
            came: number;
            /**
             * Format: double
             * @description Share that was said to lie below.
             */
            said: number;
        };
        /** @description A level, as a learner may know it. */
        LevelJson: {
            /** @description Whether a body line runs over the panel. */
            body_line: boolean;
            /**
             * Format: double
             * @description What counts as done, µm.
             */
            finish_um: number;
            /** @description Metal on file. */
            metal: string;
            name: string;
            /** Format: double */
            temperature_c: number;
            /** Format: double */
            thickness_mm: number;
        };
        /** @description A lever's answer. */
        LeverFacts: components["schemas"]["Leverage"] & {
            /**
             * Format: double
             * @description Force of the hand, N.
             */
            hand_force_n: number;
        };
        /** @description What a bar does. */
        Leverage: {
            /**
             * Format: double
             * @description Tip's force a force of the hand.
             */
            advantage: number;
            /**
             * Format: double
             * @description Force on the fulcrum, N.
             */
            fulcrum_force_n: number;
            /**
             * Format: double
             * @description How far the hand goes for the bar's own bending alone, mm.
             */
            hand_lost_mm: number;
            /**
             * Format: double
             * @description Largest stress in the bar, MPa.
             */
            stress_mpa: number;
            /**
             * Format: double
             * @description Force of the tip, N.
             */
            tip_force_n: number;
            /**
             * Format: double
             * @description How far the tip goes when the hand goes `hand_travel_mm`, mm.
             */
            tip_travel_mm: number;
            /**
             * Format: double
             * @description That stress over the yield stress: at one the bar stays bent.
             */
            used: number;
        };
        /** @description What the tip gives. */
        Levered: {
            /**
             * Format: double
             * @description Tip's force a force of the hand.
             */
            advantage: number;
            /**
             * Format: double
             * @description Force of the tip, N.
             */
            force_n: number;
            /** @description Over what. */
            fulcrum: components["schemas"]["Fulcrum"];
            /**
             * Format: double
             * @description How far the tip goes on, mm.
             */
            travel_mm: number;
        };
        /** @description One line of a quote: `amount` is `quantity` times `unit_price`, rounded. */
        Line: {
            /** @description What the line comes to. */
            amount: string;
            /**
             * Format: int64
             * @description How many dents the line stands for (dent and oversize lines only).
             */
            count?: number | null;
            /** @description What sort of line. */
            kind: components["schemas"]["LineKind"];
            on?: components["schemas"]["UpliftOn"] | null;
            /** @description How many of the unit. */
            quantity: string;
            /**
             * Format: double
             * @description Diameter of the gauge circle that the line's dents were priced by, mm (dent lines by size only; none
             *     where the size is open at the top).
             */
            size_mm?: number | null;
            /** @description What the quantity counts. */
            unit: components["schemas"]["Unit"];
            /** @description Price of one unit; for percentages, what they are taken on, divided by 100. */
            unit_price: string;
            /** @description Its text, as entered. */
            what: string;
        };
        /**
         * @description What sort of line it is; the order is the paper's.
         * @enum {string}
         */
        LineKind: "dent" | "oversize" | "remove_install" | "part" | "sundry" | "uplift" | "discount";
        /** @description A body line's run. */
        LineReport: {
            /**
             * Format: double
             * @description Direction of the line's normal from panel x, rad.
             */
            normal_rad: number;
            /**
             * Format: double
             * @description Distance of the line from the panel's origin along the normal, mm.
             */
            offset_mm: number;
            /** @description Stations along it. */
            stations: components["schemas"]["Station"][];
            /**
             * Format: double
             * @description Turn of the surface across the line beyond the panel's own curvature, mrad, of its own profile.
             */
            turn_mrad: number;
        };
        /** @description Lines of one language. */
        Lines: {
            /** @description Under a cancellation notice. */
            cancellation?: string[];
            /** @description Under an authorisation. */
            consent?: string[];
            /** @description Under an invoice. */
            invoice?: string[];
            /** @description Under a warranty. */
            warranty?: string[];
        };
        /**
         * @description What the lines should do.
         * @enum {string}
         */
        LinesDo: "opens" | "flattens";
        /** @description How a run begins again. */
        LiveAgain: {
            /** @description With the set-up photo too. */
            setup: boolean;
        };
        /** @description How a session begins. */
        LiveBegin: {
            /**
             * Format: double
             * @description Side of the panel tags' black squares, mm.
             */
            tag_mm: number;
        };
        /** @description Where screen and camera go. */
        LiveOffer: {
            /** @description Where a phone gets the certificate of this computer's own authority. */
            authority_address: string | null;
            /** @description For the screen; may be typed. */
            board_address: string;
            /** @description For a phone in this network, encrypted; none where the server is closed to other devices. */
            camera_address: string | null;
            /** @description That address as a QR code, SVG. */
            camera_picture: string | null;
            code: string;
        };
        /** @description A session under way. */
        LiveState: {
            again: components["schemas"]["Trouble"] | null;
            /** @description Whether a screen is known. */
            board: boolean;
            language: components["schemas"]["Language"];
            shot: components["schemas"]["ShotJson"] | null;
            /** @description Whether the screen shows it. */
            shown: boolean;
            /** @description The board's tags. */
            tags: components["schemas"]["TagModules"][];
            /**
             * Format: uuid
             * @description The read, once the capture is whole.
             */
            task_id: string | null;
            /** @description From 0; equal to `turns` when all is done. */
            turn: number;
            turns: number;
            /**
             * Format: int64
             * @description Counts the changes; ask with it to be answered when it has grown.
             */
            version: number;
        };
        /** @description Day on which a damage is to be read again. */
        LookAgainJson: {
            /** @description None to call it off. */
            due?: string | null;
        };
        /** @description A move made, and how the panel stands. */
        MadeJson: {
            /** @description Row by row, mm. */
            deviation_mm: number[];
            made: components["schemas"]["RehearsedMove"];
        };
        /** @description A move as it was made. */
        MadeMove: {
            /** @description What was done. */
            act: components["schemas"]["Act"];
            /** @description Place, mm. */
            at_mm: number[];
            /**
             * Format: double
             * @description Lift that was meant, mm, in size.
             */
            held_mm: number;
            /**
             * Format: double
             * @description Radius of what touched, mm.
             */
            radius_mm: number;
            /** @description How often. */
            times: number;
        };
        /** @description A move that was made; its place is in the reading's frame. */
        MadeMoveJson: {
            act: components["schemas"]["Act"];
            at_mm: number[];
            /**
             * Format: double
             * @description Lift that was meant, mm.
             */
            held_mm: number;
            /**
             * Format: uuid
             * @description Made where it was noted; noting it twice is noting it once.
             */
            id: string;
            /** @description When it was made. */
            made: string;
            /** @description Whether the plan proposed it. */
            planned?: boolean;
            /**
             * Format: double
             * @description Radius of what touched, mm.
             */
            radius_mm: number;
            /** Format: uuid */
            technician?: string | null;
            times: number;
            /** @description Name of the tip; empty where it has none. */
            tip?: string;
            /**
             * Format: double
             * @description How warm the paint was made, °C; none where nobody noted it.
             */
            warmed_c?: number | null;
        };
        /** @description File names. */
        Maps: {
            deviation: string;
            height: string;
            sigma: string;
            unread: string;
        };
        /** @description A place whose texture does not match. */
        Mark: {
            /**
             * Format: double
             * @description Area, mm².
             */
            area_mm2: number;
            /** @description How it differs. */
            kind: components["schemas"]["MarkKind"];
            /**
             * Format: double
             * @description The same of the panel, µm.
             */
            panel_sq_um: number;
            /**
             * Format: double
             * @description Root mean square of the texture there, µm.
             */
            sq_um: number;
            /**
             * Format: double
             * @description Middle, panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Middle, panel y, mm.
             */
            y_mm: number;
        };
        /**
         * @description How the texture of a place differs.
         * @enum {string}
         */
        MarkKind: "rougher" | "smoother";
        /** @description What became of them. */
        MergedJson: {
            /** @description The others: somebody else has changed the same field since. */
            clashes: components["schemas"]["Clash"][];
            /** @description The job, with every edit that could be made. */
            job: components["schemas"]["JobJson"];
        };
        /**
         * @description The metal of the outer skin.
         * @enum {string}
         */
        Metal: "steel" | "high_strength_steel" | "aluminium";
        /** @description What is asked of the metal. */
        MetalAskedJson: {
            /** @description Name of the metal on file. */
            metal: string;
            /** @description Place of the spot in the reading's list, from 0. */
            spot: number;
            /**
             * Format: double
             * @description Thickness as measured, mm; left out where it is not known.
             */
            thickness_mm?: number | null;
        };
        /** @description What the metal of a reading holds. */
        MetalFile: {
            /**
             * Format: double
             * @description Surface gained for good, mm².
             */
            area_gained_mm2: number;
            /** @description Middle of the patch in the reading's frame, mm. */
            at_mm: number[];
            bent?: components["schemas"]["MetalPlace"] | null;
            check?: components["schemas"]["QuickCheck"] | null;
            /**
             * Format: double
             * @description Greatest deviation in the patch, in size, mm.
             */
            depth_mm: number;
            /** @description Grid of the maps. */
            grid: components["schemas"]["GridFacts"];
            /**
             * Format: double
             * @description Half the patch, mm.
             */
            half_mm: number;
            /**
             * Format: double
             * @description Where the sheet would spring back if let go, so that something round it holds it in its shape: its largest stress as
             *     a share of what it takes for good. None where it stays by itself.
             */
            held?: number | null;
            /** @description A crown that holds the low beside it, mm. */
            held_by_crown?: number[] | null;
            /**
             * Format: double
             * @description How far the intended shape is off the smooth one that was taken, mm; large beside a body line.
             */
            intended_off_mm: number;
            /**
             * Format: double
             * @description How far the computed shape is off the measured one, root mean square, mm.
             */
            misfit_mm: number;
            oil_can_level?: components["schemas"]["OilCanFacts"] | null;
            oil_can_now?: components["schemas"]["OilCanFacts"] | null;
            pressed?: components["schemas"]["MetalPlace"] | null;
            pulled?: components["schemas"]["MetalPlace"] | null;
            /** @description The sheet as taken. */
            sheet: components["schemas"]["SheetFacts"];
            stretch?: components["schemas"]["MetalPlace"] | null;
            /** @description Version of the program. */
            version: string;
            /** @description `estimate`. */
            word: string;
        };
        /** @description How far the work on a metal has come, and its answer. */
        MetalJson: {
            error: components["schemas"]["Trouble"] | null;
            facts: components["schemas"]["MetalFile"] | null;
            /**
             * Format: double
             * @description Share done, 0 to 1.
             */
            fraction: number;
            state: components["schemas"]["MetalStateJson"];
            /** @description Metal on file that stands for what the car's record says. */
            suggested: string;
        };
        /** @description A metal on file. */
        MetalOnFileJson: {
            name: string;
            says: string;
            source: string;
            thickness_mm: components["schemas"]["Range"];
            yield_mpa: components["schemas"]["Range"];
        };
        /** @description A number at a place. */
        MetalPlace: {
            /** @description Where, in the reading's frame, mm. */
            at_mm: number[];
            /**
             * Format: double
             * @description How far the metal is out of place there, mm.
             */
            deviation_mm: number;
            /** @description The number. */
            value: components["schemas"]["Doubtful"];
        };
        /**
         * @description State of the work.
         * @enum {string}
         */
        MetalStateJson: "none" | "running" | "failed" | "done";
        /** @description How many times as long each metal takes as steel. */
        MetalTimes: {
            /** Format: double */
            aluminium: number;
            /** Format: double */
            high_strength_steel: number;
            /** Format: double */
            steel: number;
        };
        /** @description A move to try. */
        MoveAsked: {
            /** @description Whether it is aged or a second paint. */
            aged: boolean;
            bar?: components["schemas"]["BarAsked"] | null;
            /** @description Name of the glue on file, for a pull. */
            glue?: string | null;
            /** @description Push from inside, press or tap from outside, pull by a tab. */
            kind: components["schemas"]["MoveKind"];
            /** @description Name of the paint on file. */
            paint: string;
            /**
             * Format: double
             * @description Temperature of the panel, °C.
             */
            temperature_c: number;
            /** @description What touches. */
            tip: components["schemas"]["Tip"];
            /**
             * Format: double
             * @description Travel from first touch, mm.
             */
            travel_mm: number;
            /**
             * Format: double
             * @description Where, in the reading's frame, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Where, mm.
             */
            y_mm: number;
        };
        /** @description A quick answer with where it starts from. */
        MoveFacts: components["schemas"]["QuickAnswer"] & {
            /**
             * Format: double
             * @description Deviation at the place before the move, mm.
             */
            before_mm: number;
        };
        /**
         * @description Kind of move.
         * @enum {string}
         */
        MoveKind: "press" | "push" | "pull" | "tap";
        /** @description A move of a damage. */
        MoveOfDamageJson: components["schemas"]["MadeMoveJson"] & {
            /**
             * Format: uuid
             * @description The reading after which it was made.
             */
            reading: string;
        };
        /** @description What a move came to. */
        MoveOutcome: {
            /** @description What was foretold to stay of all times together, mm, in size, and its one-sigma doubt. */
            foretold_mm: number[];
            /**
             * Format: double
             * @description What stayed, mm, in the same sense.
             */
            left_mm: number;
            /**
             * Format: double
             * @description One-sigma doubt of that, mm.
             */
            sigma_mm: number;
        };
        /** @description What a move came to. */
        MoveOutcomeJson: components["schemas"]["MadeMove"] & components["schemas"]["MoveOutcome"];
        /** @description What a move would do. Every number is an estimate. */
        MoveTried: {
            answer?: components["schemas"]["MoveFacts"] | null;
            glue?: components["schemas"]["GlueHold"] | null;
            lever?: components["schemas"]["LeverFacts"] | null;
            paint?: components["schemas"]["PaintRisk"] | null;
            paint_way_back?: components["schemas"]["PaintRisk"] | null;
        };
        /** @description Why a move. */
        MoveWhy: {
            /**
             * Format: double
             * @description Depth, mm.
             */
            depth_mm: number;
            /** @enum {string} */
            why: "large_shape";
        } | {
            /**
             * Format: double
             * @description Depth, mm.
             */
            depth_mm: number;
            /** @enum {string} */
            why: "low";
        } | {
            /**
             * Format: double
             * @description Height, mm.
             */
            height_mm: number;
            /**
             * Format: double
             * @description How far that low comes up by this move alone, mm; negative where it goes deeper.
             */
            low_comes_up_mm: number;
            /**
             * Format: double
             * @description Depth of the deepest low near it, mm.
             */
            low_mm: number;
            /** @enum {string} */
            why: "crown";
        } | {
            /**
             * Format: double
             * @description Height, mm.
             */
            height_mm: number;
            /** @enum {string} */
            why: "high";
        };
        /** @description A row on file. */
        NamedJson: {
            name: string;
            says: string;
            source: string;
        };
        /** @description A damage that is marked. */
        NewDamageJson: {
            /**
             * Format: uuid
             * @description Made on a device without network; what comes again under it is the same damage.
             */
            id?: string | null;
            note?: string;
            panel: components["schemas"]["Panel"];
            /**
             * Format: double
             * @description Place on the panel as it is drawn, from the left, 0 to 1.
             */
            x: number;
            /**
             * Format: double
             * @description From the top.
             */
            y: number;
        };
        /** @description A table that is imported. */
        NewHailTable: {
            /** @description The file's text. */
            csv: string;
            /** @description Its name, such as the insurer's and the year. */
            name: string;
            /** @description What its prices are for. */
            per: components["schemas"]["PricePer"];
        };
        /** @description A car that is taken in. */
        NewJobJson: {
            /**
             * @default {
             *       "colour": "",
             *       "high_voltage": null,
             *       "make": "",
             *       "metals": {},
             *       "model": "",
             *       "odometer_km": null,
             *       "paint": "",
             *       "plate": "",
             *       "vin": null,
             *       "year": null
             *     }
             */
            car: components["schemas"]["CarJson"];
            /**
             * @default {
             *       "address": "",
             *       "email": "",
             *       "name": "",
             *       "phone": ""
             *     }
             */
            customer: components["schemas"]["Customer"];
            /**
             * Format: uuid
             * @description Made on a device without network; what comes again under it is the same job.
             * @default null
             */
            id: string | null;
            /** @default  */
            notes: string;
            /** @default  */
            place: string;
            /**
             * Format: date
             * @default null
             */
            promised: string | null;
            /** @default null */
            promised_time: string | null;
        };
        /** @description A rehearsal to begin. */
        NewRehearsalJson: {
            /** @description Who learns. */
            learner: string;
            level: string;
            /**
             * Format: int32
             * @description The same seed brings the same panel; left out for a new one.
             */
            seed?: number | null;
        };
        /** @description A stretch of work that begins now, or is entered whole. */
        NewTimeJson: {
            /**
             * Format: uuid
             * @description Its id, made by a device without network; sent twice it is one entry.
             */
            id?: string | null;
            kind: components["schemas"]["WorkKind"];
            /**
             * Format: date-time
             * @description From when; left out for now.
             */
            started?: string | null;
            /**
             * Format: date-time
             * @description Until when; left out for a clock that runs.
             */
            stopped?: string | null;
            /**
             * Format: uuid
             * @description Whose; left out for the first of the crew.
             */
            technician?: string | null;
        };
        /** @description A remark. */
        Note: {
            code: string;
            text: string;
        };
        /** @description Whether the sheet pops. */
        OilCanFacts: {
            pops?: components["schemas"]["Forced"] | null;
            /** @description Where that is, mm. */
            softest_at_mm: number[];
            /** @description Whether it stays where it is. */
            stable: boolean;
            /**
             * Format: double
             * @description Force a mm of a light push where it is softest, N/mm.
             */
            stiffness_n_per_mm: number;
        };
        /** @description A mark of old damage. */
        OldJson: {
            /** Format: uuid */
            id: string;
            kind: components["schemas"]["OldKind"];
            note?: string;
            panel: components["schemas"]["Panel"];
            /**
             * Format: double
             * @description Place on the panel as it is drawn, from the left, 0 to 1.
             */
            x: number;
            /**
             * Format: double
             * @description From the top.
             */
            y: number;
        };
        /**
         * @description What old damage is.
         * @enum {string}
         */
        OldKind: "scratch" | "chip" | "crack" | "dent" | "rust" | "broken" | "repaired";
        /** @description What is on file for the metal's questions. */
        OnFileJson: {
            glues: components["schemas"]["NamedJson"][];
            /** @description What is on or behind a panel that must not get too warm. */
            heat_limits: components["schemas"]["HeatLimit"][];
            metals: components["schemas"]["MetalOnFileJson"][];
            paints: components["schemas"]["NamedJson"][];
        };
        /** @description An opening that exists. */
        Opening: {
            /** @description What it is: window slot, drain hole, lamp pocket. */
            name: string;
            /** @description Its rim in the wall's plane. */
            outline: components["schemas"]["Outline"];
            /** @description Trim that must come off first. */
            trim?: string | null;
        };
        /** @description A closed line in a plane, mm. */
        Outline: {
            /** @description Middle. */
            at: number[];
            /** @enum {string} */
            shape: "rectangle";
            /** @description Width and height. */
            size: number[];
        } | {
            /** @description Middle. */
            at: number[];
            /**
             * Format: double
             * @description Radius.
             */
            radius: number;
            /** @enum {string} */
            shape: "circle";
        } | {
            /** @description Corners. */
            corners: number[][];
            /** @enum {string} */
            shape: "polygon";
        };
        /**
         * @description What is known of the paint, as far as it changes the time.
         * @enum {string}
         */
        Paint: "factory" | "old" | "repainted";
        /** @description A reading of the paint gauge. */
        PaintReading: {
            /**
             * Format: uuid
             * @description Its id.
             */
            id: string;
            /** @description On which panel. */
            panel: components["schemas"]["Panel"];
            /**
             * Format: double
             * @description Thickness of the film, µm.
             */
            um: number;
        };
        /** @description A judgement with its reasons. */
        PaintRisk: {
            /** @description Why, in words. */
            reasons: string[];
            /** @description Risk. */
            risk: components["schemas"]["PaintRiskLevel"];
            /**
             * Format: double
             * @description Strain on the paint's face.
             */
            strain: number;
            /** @description What such paint takes at least, and likely. */
            takes: number[];
        };
        /**
         * @description Risk to the paint; never a promise.
         * @enum {string}
         */
        PaintRiskLevel: "low" | "raised" | "high";
        /**
         * @description What a panel's paint says beside the others.
         * @enum {string}
         */
        PaintSays: "usual" | "thick" | "thin" | "too_few";
        /** @description How many times as long each paint takes as one in order. */
        PaintTimes: {
            /** Format: double */
            factory: number;
            /** Format: double */
            old: number;
            /** Format: double */
            repainted: number;
        };
        /** @description A pairing code as typed or scanned. */
        PairingCode: {
            code: string;
        };
        /** @description How another device is paired. */
        PairingOffer: {
            /** @description The address that the picture holds. */
            address: string;
            /** @description The code, for typing. */
            code: string;
            /** @description The address as a QR code, SVG. */
            picture: string;
        };
        /**
         * @description An outer panel.
         * @enum {string}
         */
        Panel: "bonnet" | "roof" | "boot_lid" | "tailgate" | "front_wing_left" | "front_wing_right" | "rear_wing_left" | "rear_wing_right" | "front_door_left" | "front_door_right" | "rear_door_left" | "rear_door_right" | "roof_rail_left" | "roof_rail_right" | "front_bumper" | "rear_bumper" | "sill_left" | "sill_right" | "fuel_flap";
        /** @description A panel's paint beside the car's other panels. */
        PanelPaint: {
            /**
             * Format: double
             * @description Median of the other panels, µm; none where none was read.
             */
            others_um: number | null;
            /** @description Which panel. */
            panel: components["schemas"]["Panel"];
            /** @description How many readings. */
            readings: number;
            /** @description What that says. */
            says: components["schemas"]["PaintSays"];
            /**
             * Format: double
             * @description How far the other panels lie from their median in the middle, µm.
             */
            spread_um: number | null;
            /**
             * Format: double
             * @description Median of its readings, µm.
             */
            um: number;
        };
        /** @description One panel by each rule. */
        PanelSizes: {
            /** @description Its lines' sum with each dent at its own size; none where the table ends before. */
            gauge?: string | null;
            /** @description Its lines' sum at the size of its majority; none where the table ends before. */
            majority?: string | null;
            /**
             * Format: double
             * @description Diameter of the circle that its majority lies in, mm; none where that size is open at the top.
             */
            majority_mm?: number | null;
            /**
             * Format: int64
             * @description How many of them are larger than all sizes.
             */
            oversize: number;
            /** @description Its dents by size, smallest first; sizes without dents are left out. */
            sizes: components["schemas"]["SizeCount"][];
            /** @description The panel's name. */
            what: string;
        };
        /** @description Centre of a tag. */
        PanelTagPlace: {
            id: number;
            /** Format: double */
            x_mm: number;
            /** Format: double */
            y_mm: number;
            /** Format: double */
            z_mm: number;
        };
        /**
         * @description Size of the sheet.
         * @enum {string}
         */
        Paper: "a4" | "letter";
        /** @description A file of a paper. */
        PaperFileJson: {
            /**
             * Format: int64
             * @description Its size, bytes.
             */
            bytes: number;
            /** @description BLAKE3 of its bytes. */
            hash: string;
            /** @description Its name. */
            name: string;
        };
        /** @description A paper in a list. */
        PaperJson: {
            /** @description When it was issued, ISO 8601. */
            created: string;
            /** @description ISO 4217 code. */
            currency?: string | null;
            /** @description Its files. */
            files: components["schemas"]["PaperFileJson"][];
            /**
             * Format: uuid
             * @description The paper that it follows.
             */
            follows?: string | null;
            /** @description What it comes to, with tax; none where it is about no money. */
            gross?: string | null;
            /**
             * Format: uuid
             * @description Its id.
             */
            id: string;
            /** @description Its kind. */
            kind: components["schemas"]["PaperKind"];
            /** @description Its language's code. */
            language: string;
            /** @description Why an invoice carries no e-invoice: rules of EN 16931 that it breaks. */
            no_e_invoice: string[];
            /** @description Its number; none for a paper without one. */
            number?: string | null;
            /** @description Who signed it on glass. */
            signed_by?: string | null;
        };
        /**
         * @description A sort of paper.
         * @enum {string}
         */
        PaperKind: "estimate" | "authorisation" | "supplement" | "work_order" | "evidence" | "certificate" | "warranty" | "cancellation" | "invoice" | "credit_note" | "receipt";
        /** @description A part that is fitted. */
        Part: {
            /** @description How many. */
            quantity: string;
            /** @description Price of one. */
            unit_price: string;
            /** @description Its name. */
            what: string;
        };
        /** @description The sheet a plan goes by. */
        PatchFacts: {
            /** @description Middle of the patch on the panel, mm. */
            at_mm: number[];
            /** @description Panel curvature, 1/mm: along x, across, along y. */
            curvature: number[];
            /**
             * Format: double
             * @description Half its side, mm.
             */
            half_mm: number;
            /**
             * Format: double
             * @description How far the intended shape is off that, root mean square, mm.
             */
            intended_off_mm: number;
            /** @description Name of the metal. */
            metal: string;
            /** @description What it is. */
            says: string;
            /** @description Where its numbers come from. */
            source: string;
            /**
             * Format: double
             * @description Thickness, mm.
             */
            thickness_mm: number;
        };
        /** @description How a technician is paid. */
        Pay: {
            /** @enum {string} */
            by: "none";
        } | {
            /** @enum {string} */
            by: "hour";
            /** @description Pay of an hour, in the shop's currency. */
            rate: string;
        } | {
            /** @enum {string} */
            by: "share";
            /** @description %, 0 to 100. */
            percent: string;
        };
        /** @description A technician's row. */
        PayRow: {
            /**
             * Format: int64
             * @description Clocked within the period, s.
             */
            clocked_s: number;
            /** @description Jobs done within the period on which they worked. */
            jobs: components["schemas"]["JobPay"][];
            /** @description What it comes to; none for those who are not paid by this sheet. */
            pay: string | null;
            /** @description Who. */
            technician: components["schemas"]["Technician"];
        };
        /** @description The pay sheet. */
        PaySheet: {
            currency: string;
            /** @description Entries in doubt that began within the period: they count nowhere until they are set right. */
            in_doubt: number;
            rows: components["schemas"]["PayRow"][];
            /** @description Numbers of jobs that were done within the period and on which nobody clocked: they are in no row. */
            unclocked: string[];
            /** @description The same of jobs whose quote cannot be made, or is in another currency. */
            unpriced: string[];
        };
        /** @description The panel photo. */
        PhotoFacts: {
            file: string;
            height_px: number;
            width_px: number;
        };
        /**
         * @description Where on the panel the dent lies.
         * @enum {string}
         */
        Place: "flat" | "body_line" | "edge" | "rail";
        /** @description How many times as long each place takes as a flat part of a panel. */
        PlaceTimes: {
            /** Format: double */
            body_line: number;
            /** Format: double */
            edge: number;
            /** Format: double */
            flat: number;
            /** Format: double */
            rail: number;
        };
        /** @description A move of a round with what it is made with. */
        Placed: components["schemas"]["Planned"] & {
            /** @description What it is made with. */
            tooling: components["schemas"]["Tooling"];
        };
        /** @description What a plan is asked from. */
        PlanAskedJson: {
            /** @description Whether it is aged or a second coat. */
            aged?: boolean;
            /** @description What this repair and a conventional one cost. */
            costs?: number[] | null;
            /** @description Name of the glue on file; none where none may be used. */
            glue?: string | null;
            /** @description A rule of the maker that forbids the repair, in its words. */
            makers_rule?: string | null;
            /** @description Name of the metal on file. */
            metal: string;
            /**
             * Format: double
             * @description Warmest the paint may get, °C.
             */
            most_c: number;
            /** @description Name of the paint on file. */
            paint: string;
            /**
             * Format: double
             * @description Temperature of the panel now, °C.
             */
            panel_c: number;
            /** @description Place of the spot in the reading's list, from 0; none for the deepest. */
            spot?: number | null;
            /**
             * Format: uuid
             * @description Who works; none in a shop of one.
             */
            technician?: string | null;
            /**
             * Format: double
             * @description Thickness as measured, mm; none for the metal's likely one.
             */
            thickness_mm?: number | null;
        };
        /** @description The whole file. */
        PlanFile: components["schemas"]["RepairPlan"] & {
            /** @description Where every move lies on the panel photo, px, round by round; none where the reading does not tell. */
            at_px: (number[] | null)[][];
            /** @description Cautions that apply. */
            cautions: components["schemas"]["Caution"][];
            /** @description Tips of the rack that are too fine for this model to tell what they do. */
            fine_tips: string[];
            /**
             * Format: double
             * @description Finish limit, mm.
             */
            limit_mm: number;
            /** @description Paint on file it goes by. */
            paint?: string | null;
            /** @description The photo. */
            photo: string;
            sheet?: components["schemas"]["PatchFacts"] | null;
            /** @description Version of the program. */
            version: string;
        };
        /** @description How far the work on a plan has come, and its answer. */
        PlanJson: {
            asked: components["schemas"]["PlanAskedJson"] | null;
            came_of: components["schemas"]["CameOfJson"] | null;
            error: components["schemas"]["Trouble"] | null;
            /**
             * Format: double
             * @description Share done, 0 to 1.
             */
            fraction: number;
            plan: components["schemas"]["PlanFile"] | null;
            state: components["schemas"]["MetalStateJson"];
            /** @description Metal on file that stands for what the car's record says. */
            suggested: string;
        };
        /** @description A reason against, or a doubt. */
        PlanReason: {
            /**
             * Format: double
             * @description Force, N; none where it does not stay.
             */
            pops_at_n?: number | null;
            /** @enum {string} */
            reason: "oil_can";
        } | {
            /**
             * Format: double
             * @description Surface gained, share.
             */
            area: number;
            /** @enum {string} */
            reason: "stretched";
        } | {
            /** @enum {string} */
            reason: "paint";
            /** @description Risk at the warmest a shop works, or the paint may get here. */
            risk: components["schemas"]["PaintRiskLevel"];
            /**
             * Format: double
             * @description Strain on its face.
             */
            strain: number;
        } | {
            /** @description What stands in the way. */
            blocked: components["schemas"]["Blocked"][];
            /** @enum {string} */
            reason: "access";
        } | {
            /** @enum {string} */
            reason: "makers_rule";
            /** @description As entered. */
            rule: string;
        } | {
            /**
             * Format: double
             * @description Conventional repair.
             */
            conventional: number;
            /**
             * Format: double
             * @description This repair.
             */
            ours: number;
            /** @enum {string} */
            reason: "dearer";
        } | {
            /** @enum {string} */
            reason: "not_computed";
        } | {
            /**
             * Format: double
             * @description After it.
             */
            after_mm: number;
            /**
             * Format: double
             * @description Largest residual before the round, mm.
             */
            before_mm: number;
            /** @enum {string} */
            reason: "went_over";
        };
        /** @description A move to make. */
        Planned: components["schemas"]["MoveWhy"] & {
            /** @description What is done. */
            act: components["schemas"]["Act"];
            /** @description Place, mm. */
            at_mm: number[];
            /**
             * Format: double
             * @description Force at the tip, N.
             */
            force_n: number;
            /**
             * Format: double
             * @description Travel of the tip from first touch, mm, in size: the lift to hold.
             */
            held_mm: number;
            /** @description What should stay of all times together, mm, in size, and its one-sigma doubt. */
            leaves_mm: number[];
            /** @description What the lines should do. */
            lines: components["schemas"]["LinesDo"];
            /**
             * Format: double
             * @description Warmth of the paint, °C.
             */
            paint_c: number;
            /** @description Risk to the paint at that warmth. */
            paint_risk: components["schemas"]["PaintRiskLevel"];
            /**
             * Format: double
             * @description Strain the move puts on the paint's face.
             */
            paint_strain: number;
            /**
             * Format: double
             * @description Equivalent plastic strain spent.
             */
            spends: number;
            /**
             * Format: double
             * @description Stop and read again when the place has come up (or down) by this much, mm: half of what is missing more than planned.
             */
            stop_at_mm: number;
            /** @description How often, each time as far. */
            times: number;
            /** @description What touches. */
            tip: components["schemas"]["ToolTip"];
            /**
             * Format: double
             * @description Where the place stands while held, outward positive from the intended surface, mm.
             */
            while_held_mm: number;
        };
        /**
         * @description What a price of a table is for.
         * @enum {string}
         */
        PricePer: "panel" | "dent";
        /** @description How the dents are priced. */
        PricedBy: {
            /** @enum {string} */
            by: "hours";
        } | {
            /** @enum {string} */
            by: "size_classes";
            /** @description The classes, smallest first; only the last may be open at the top. */
            classes: components["schemas"]["SizeClass"][];
            /** @description How dents get their size. */
            size_rule?: components["schemas"]["SizeRule"];
        } | {
            /** @enum {string} */
            by: "hail_table";
            /** @description On top for every dent larger than the table's largest size, which it counts as. */
            oversize?: string | null;
            /** @description How dents get their size. */
            size_rule?: components["schemas"]["SizeRule"];
            /** @description The table's id; the table itself is handed to [`quote`](crate::quote()) beside the input. */
            table: string;
        } | {
            /** @enum {string} */
            by: "day_rate";
            /** @description Price of a day. */
            day_rate: string;
            /** @description How many days; none for the likely hours, up to the next half day. */
            days?: string | null;
            /** @description Hours that are worked on dents in a day, h. */
            hours_per_day: string;
        };
        /** @description What is entered for a quote beside the dents. Money is in `currency`, without tax. */
        Pricing: {
            /** @description Whether percentages add or compound; shown on the quote. */
            add_or_compound?: components["schemas"]["Stacking"];
            /** @description Paint and temperature. */
            conditions?: components["schemas"]["Conditions"];
            /** @description What the conventional repair would cost, without tax; none where nobody entered it. */
            conventional?: string | null;
            /** @description ISO 4217 code of the currency. */
            currency: string;
            discount?: components["schemas"]["Discount"] | null;
            /** @description Tax on parts and sundries, %, where it is another one than on work. */
            goods_tax_percent?: string | null;
            /** @description Price of an hour of work. */
            hourly_rate: string;
            /** @description Parts that are fitted. */
            parts?: components["schemas"]["Part"][];
            /** @description Trim to remove and install. */
            ri_lines?: components["schemas"]["RiLine"][];
            split?: components["schemas"]["Split"] | null;
            /** @description Wax, clips, disposal: a text and an amount each. */
            sundries?: components["schemas"]["Sundry"][];
            /** @description Tax on the net total, %. */
            tax_percent: string;
            /** @description Where the tax is rounded. */
            tax_rounding?: components["schemas"]["TaxRounding"];
            /** @description Percentages on top. */
            uplifts?: components["schemas"]["Uplift"][];
            /** @description How the dents are priced. */
            way?: components["schemas"]["PricedBy"];
        };
        /** @description A read that is queued. */
        Queued: {
            /** Format: uuid */
            task_id: string;
        };
        /** @description What a move does, quickly. Heights are changes, outward positive, mm. */
        QuickAnswer: {
            /**
             * Format: double
             * @description Largest strain of the outer face the move adds while held: what the paint feels.
             */
            face_strain: number;
            /**
             * Format: double
             * @description Largest force, N.
             */
            force_n: number;
            /**
             * Format: double
             * @description Lift of the place while held.
             */
            held_mm: number;
            /**
             * Format: double
             * @description Lift that stays.
             */
            left_mm: number;
            /**
             * Format: double
             * @description How far out that is.
             */
            shoulder_at_mm: number;
            /**
             * Format: double
             * @description Largest lift that stays outside the tip, ring's mean.
             */
            shoulder_mm: number;
            /**
             * Format: double
             * @description Equivalent plastic strain added, most worked layer.
             */
            spent: number;
            /**
             * Format: double
             * @description Travel from first touch, mm.
             */
            travel_mm: number;
        };
        /** @description A push solved in full and quickly. */
        QuickCheck: {
            /** Format: double */
            full_force_n: number;
            /** Format: double */
            full_left_mm: number;
            /** Format: double */
            quick_force_n: number;
            /** Format: double */
            quick_left_mm: number;
            /** Format: double */
            travel_mm: number;
        };
        /** @description A quote. All money in `currency`, with all its decimals. */
        Quote: {
            /** @description Whether percentages were added or compounded. */
            add_or_compound: components["schemas"]["Stacking"];
            against?: components["schemas"]["Against"] | null;
            /** @description ISO 4217 code of the currency. */
            currency: string;
            /** @description Net and tax. */
            gross: string;
            /** @description Gross if the dents take their high hours; as `gross` where hours do not make the price. */
            gross_high: string;
            /** @description Gross if the dents take their low hours; as `gross` where hours do not make the price. */
            gross_low: string;
            /** @description Gross if they were stacked the other way; none with fewer than two. */
            gross_stacked_otherwise?: string | null;
            /** @description Hours of the dents together, with their doubt. R&I hours are not among them. */
            hours: components["schemas"]["Hours"];
            /** @description What is charged, in the order of the paper. */
            lines: components["schemas"]["Line"][];
            /** @description Sum of the lines. */
            net: string;
            shares?: components["schemas"]["Shares"] | null;
            size_rules?: components["schemas"]["SizeRules"] | null;
            /** @description Tax on net. */
            tax: string;
            /** @description Tax on net, %; where goods have a rate of their own, the one on work. */
            tax_percent: string;
            /** @description Tax by rate. */
            taxes?: components["schemas"]["TaxSum"][];
        };
        /** @description What was entered and what comes of it. */
        QuoteAnswer: {
            /** @description Hours of each dent line, with what made them. */
            dent_hours: components["schemas"]["DentHours"][];
            /** @description What was entered beside the dents. */
            input: components["schemas"]["Pricing"];
            quote: components["schemas"]["Quote"];
            /**
             * Format: int64
             * @description When that was last saved; a save names it, so that two who edit one quote do not undo each other.
             */
            saved: number;
            worked: components["schemas"]["Foretold"] | null;
        };
        /** @description What a shop owns. */
        Rack: {
            /** @description Knock-downs. */
            knock_down: components["schemas"]["ToolTip"][];
            /** @description Tabs for glue. */
            tab: components["schemas"]["ToolTip"][];
            /** @description Tips that go on them. */
            tip: components["schemas"]["ToolTip"][];
            /** @description Bars, hooks, blades. */
            tool: components["schemas"]["Tool"][];
        };
        /** @description A value known within bounds. */
        Range: {
            /**
             * Format: double
             * @description Highest to be expected.
             */
            high: number;
            /**
             * Format: double
             * @description Taken where one number is needed.
             */
            likely: number;
            /**
             * Format: double
             * @description Lowest to be expected.
             */
            low: number;
        };
        /** @description A place that is to be reached. */
        ReachAskedJson: {
            /** @description Place, mm. */
            at_mm: number[];
            /**
             * Format: uuid
             * @description The reading in whose frame the place is given.
             */
            reading: string;
        };
        /** @description A tool that reaches. */
        ReachJson: {
            /**
             * Format: double
             * @description Length of bar behind the wall, mm.
             */
            inside_mm: number;
            /** @description What it gives. */
            levered: components["schemas"]["Levered"];
            /**
             * Format: double
             * @description Angle between its push and the panel's normal, degrees.
             */
            off_square_deg: number;
            /** @description Corners of the bar as it stands ready, from the tip to the hand, mm; drawing's frame. */
            stands_mm: number[][];
            /** @description Wall and opening it goes through. */
            through: string[];
            tip: string;
            /** @description Tool of the rack, and the tip on it. */
            tool: string;
            /** @description Trim that must come off first. */
            trim: string | null;
        };
        /** @description What reaches a place. */
        ReachesJson: {
            /** @description What stood in the way of the others, most frequent first. */
            blocked: components["schemas"]["Blocked"][];
            /** @description Tools that reach, squarest and strongest first. */
            reaches: components["schemas"]["ReachJson"][];
        };
        /**
         * @description Why to stop after a round.
         * @enum {string}
         */
        ReadAgain: "doubt_grows" | "should_be_level";
        /** @description A reading in a list. */
        ReadingEntryJson: {
            created: string;
            /** Format: uuid */
            id: string;
        };
        /** @description The whole file. */
        ReadingFile: {
            /** @description What is known of the camera. */
            camera: components["schemas"]["CameraFacts"];
            /** @description Done or not. */
            finish: components["schemas"]["Finish"];
            /** @description Holes that were too steep to read, largest first; a spot names those in it by their place in this list. */
            folds?: components["schemas"]["Fold"][];
            /** @description Every photo. */
            frames: components["schemas"]["FrameFacts"][];
            /** @description Depths that were measured by hand and joined. */
            gauges?: components["schemas"]["GaugeFacts"][];
            /** @description Grid of the maps. */
            grid: components["schemas"]["GridFacts"];
            /** @description File names of the maps. */
            maps: components["schemas"]["Maps"];
            /** @description Remarks. */
            notes: components["schemas"]["Note"][];
            /** @description Centre of every panel tag, mm. */
            panel_tags: components["schemas"]["PanelTagPlace"][];
            /** @description The panel photo on which spots are laid. */
            photo: components["schemas"]["PhotoFacts"];
            /**
             * Format: double
             * @description Share of the grid that was read.
             */
            read_fraction: number;
            /** @description `absolute` or `relative`. */
            scale: string;
            /** @description Settings of the reading. */
            settings: unknown;
            /** @description Lows and highs, deepest first. */
            spots: components["schemas"]["SpotFacts"][];
            stand?: components["schemas"]["StandFacts"] | null;
            texture?: components["schemas"]["TextureFacts"] | null;
            /** @description What could not be read. */
            unread: components["schemas"]["UnreadFacts"][];
            /** @description Version of the program. */
            version: string;
        };
        /** @description A reading. */
        ReadingJson: components["schemas"]["ReadingFile"] & {
            /** Format: uuid */
            capture_id: string;
            created: string;
            /** Format: uuid */
            damage_id: string;
            /** Format: uuid */
            id: string;
        };
        /** @description A rehearsal. */
        RehearsalJson: {
            claims: components["schemas"]["Claim"][];
            /** @description Deviation now, mm. */
            deviation_mm: number[];
            grid: components["schemas"]["GridFacts"];
            /** Format: uuid */
            id: string;
            /** @description Intended height, row by row, mm. */
            intended_mm: number[];
            learner: string;
            level: components["schemas"]["LevelJson"];
            made: components["schemas"]["RehearsedMove"][];
            score: components["schemas"]["RehearsalScore"] | null;
            /** Format: int64 */
            seed: number;
            /** Format: double */
            temperature_c: number;
        };
        /** @description An ended rehearsal, a line of a learner's sheet. */
        RehearsalRow: {
            ended: string;
            /** Format: uuid */
            id: string;
            learner: string;
            level: string;
            score: components["schemas"]["RehearsalScore"];
        };
        /** @description The score. */
        RehearsalScore: {
            /**
             * Format: double
             * @description Middle distance of a tip from the nearest place that stood out most its way, mm; none without moves.
             */
            aim_off_mm?: number | null;
            /** @description Whether the paint cracked. */
            cracked: boolean;
            /**
             * Format: double
             * @description What counts as done, µm.
             */
            finish_um: number;
            /** @description Whether that was reached. */
            finished: boolean;
            /** @description Of these from the front. */
            from_front: number;
            /**
             * Format: double
             * @description Largest deviation left, µm.
             */
            left_um: number;
            /** @description Moves made. */
            moves: number;
            /**
             * Format: double
             * @description Share of what was read that is so; none where nothing was read off.
             */
            reading?: number | null;
            /** @description Moves on which the sheet snapped. */
            snaps: number;
            /**
             * Format: double
             * @description Plastic strain added by the work, most worked layer.
             */
            strain_spent: number;
        };
        /** @description A move made. */
        RehearsedMove: {
            /**
             * Format: double
             * @description Distance of the tip from the nearest place that stood out most its way, mm.
             */
            aim_off_mm: number;
            /** @description Whether that cracked it. */
            cracked: boolean;
            /**
             * Format: double
             * @description Largest force, N.
             */
            force_n: number;
            /**
             * Format: double
             * @description Lift while held, mm.
             */
            held_mm: number;
            /**
             * Format: double
             * @description Lift that stayed, mm.
             */
            left_mm: number;
            /** @description Whether the sheet found no rest and stands as before. */
            lost: boolean;
            /**
             * Format: double
             * @description Strain the paint's face took.
             */
            paint_strain: number;
            /** @description Whether the sheet snapped on the way. */
            snapped: boolean;
            /**
             * Format: double
             * @description Temperature of the panel, °C.
             */
            temperature_c: number;
            /** @description What was asked. */
            touch: components["schemas"]["Touch"];
        };
        /** @description A job under another number. */
        Renumbered: {
            is: string;
            was: string;
        };
        /** @description What a master would tell the apprentice. Every number is an estimate. */
        RepairPlan: {
            /**
             * Format: double
             * @description Share of the patch that was not read and is bridged.
             */
            bridged: number;
            /** @description Where the first round parts from what the trade does as a rule. */
            departures: components["schemas"]["Departure"][];
            /** @description Gain of the hand and share of the sheet, each with one sigma. */
            hand: number[][];
            /** @description Whether it is level already. */
            level: boolean;
            /**
             * Format: double
             * @description How far the computed sheet is off what was read, root mean square over the damage, mm.
             */
            misfit_mm: number;
            /** @description Rounds; the first is to be made, the others are foretold and will change with the next reading. */
            rounds: components["schemas"]["Round"][];
            /** @description Lows that neither a bar nor glue reaches, mm. */
            unreached_mm: number[][];
            /** @description Whether it can be done, and why not. */
            verdict: components["schemas"]["CanBeDone"];
        };
        /** @description What is left of the damage on the cells of a map that were read. */
        Residual: {
            /**
             * Format: double
             * @description Largest deviation that stands out, mm, signed; 0 where none does.
             */
            largest_mm: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm; the ordinary doubt where none stands out.
             */
            sigma_mm: number;
            /** @description Volume of what stands out, lows and highs together. */
            volume: components["schemas"]["Volume"];
        };
        /** @description Removing and installing a part of the car. */
        RiLine: components["schemas"]["Charge"] & {
            /** @description What is removed and installed. */
            what: string;
        };
        /** @description Moves between two readings. */
        Round: {
            /**
             * Format: double
             * @description Largest residual before it, mm.
             */
            before_mm: number;
            /**
             * Format: double
             * @description Largest residual expected after it, mm.
             */
            expected_mm: number;
            /** @description Moves left out because the sheet would pop on the way, or nothing would stay. */
            left_out: number;
            /** @description Moves in order. */
            moves: components["schemas"]["Placed"][];
            /** @description Whether full solves prove every move; later rounds are foretold by quick answers. */
            proved: boolean;
            /** @description Why to read again after it. */
            read_again: components["schemas"]["ReadAgain"];
            /**
             * Format: double
             * @description One-sigma doubt of that, this round's and those before it, mm.
             */
            sigma_mm: number;
        };
        /** @description What a screen says of itself: its lit area in its own pixels, and where its tags are in it. */
        ScreenJson: {
            /** Format: double */
            height_px: number;
            /** Format: double */
            mm_per_px: number;
            tags: components["schemas"]["ScreenTagJson"][];
            /** Format: double */
            width_px: number;
        };
        /** @description A tag on the screen: its centre from the lit area's upper left corner, its side. */
        ScreenTagJson: {
            id: number;
            /** Format: double */
            size_px: number;
            /** Format: double */
            x_px: number;
            /** Format: double */
            y_px: number;
        };
        /** @description A reading of a series. */
        SeriesEntry: {
            laying?: components["schemas"]["Laying"] | null;
            /** @description What was left of the damage. */
            residual: components["schemas"]["Residual"];
        };
        /** @description A reading of a series. */
        SeriesReadingJson: components["schemas"]["SeriesEntry"] & {
            created: string;
            /** @description Grid of its maps, as they are filed. */
            grid: components["schemas"]["GridFacts"];
            /** Format: uuid */
            id: string;
            verdict: components["schemas"]["Verdict"];
        };
        /** @description What would settle it, with the doubt it takes. */
        Settle: {
            /** @description Which. */
            code: components["schemas"]["SettleCode"];
            /**
             * Format: double
             * @description One-sigma doubt that would tell, mm; none for a hole.
             */
            needed_sigma_mm?: number | null;
            /**
             * Format: double
             * @description One-sigma doubt there, mm; none for a hole.
             */
            sigma_mm?: number | null;
            /**
             * Format: double
             * @description Panel x of the place, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Panel y, mm.
             */
            y_mm: number;
        };
        /**
         * @description What would settle a "cannot tell".
         * @enum {string}
         */
        SettleCode: "less_doubt" | "at_the_limit" | "read_the_rest" | "closer";
        /** @description Net, shared; the two add up to it. */
        Shares: {
            /** @description The shop's. */
            shop: string;
            /** @description The technician's. */
            technician: string;
        };
        /** @description The sheet as taken. */
        SheetFacts: {
            kinematic_share: components["schemas"]["Range"];
            metal: string;
            says: string;
            source: string;
            thickness_mm: components["schemas"]["Range"];
            yield_mpa: components["schemas"]["Range"];
        };
        /** @description The shop and what it has chosen. */
        Shop: {
            /** @description Street and town. */
            address: string;
            /** @description ISO 4217 code of the currency. */
            currency: string;
            /** @description Mail address. */
            email: string;
            /**
             * Format: double
             * @description Deviation from the intended shape that still counts as done, µm.
             */
            finish_limit_um: number;
            /**
             * Format: double
             * @description Waves shorter than this are texture, mm.
             */
            finish_scale_mm: number;
            /**
             * Format: double
             * @description Slope of that deviation that still counts as done, mrad (µm per mm).
             */
            finish_slope_mrad: number;
            /** @description Price of an hour, without tax. */
            hourly_rate: string;
            /** @description Language of app and papers. */
            language: components["schemas"]["Language"];
            /** @description Unit of length on screen and paper. */
            length_unit: components["schemas"]["LengthUnit"];
            /** @description Its name. */
            name: string;
            /** @description Telephone. */
            phone: string;
            /** @description Tax number. */
            tax_id: string;
            /** @description Tax, %. */
            tax_percent: string;
            /** @description Unit of temperature on screen and paper. */
            temperature_unit: components["schemas"]["TemperatureUnit"];
        };
        /**
         * @description A place of the checklist. Damaged panels have photos of their own beside these.
         * @enum {string}
         */
        Shot: "front_left" | "front_right" | "rear_right" | "rear_left" | "instruments" | "vin" | "old" | "gauge";
        /** @description What is shown and shot. */
        ShotJson: {
            /** @description `setup`, `panel` or `pattern`. */
            role: string;
            wave: components["schemas"]["Wave"] | null;
        };
        /** @description A signature. */
        Signature: {
            /** @description When, by the clock of the device. */
            at: string;
            /** @description Who signed. */
            name: string;
            /** @description Strokes of the pen, each a list of places: right and down, in widths of the pad. */
            strokes: number[][][];
        };
        /** @description Who signed, when, and what. */
        SignedJson: {
            /** @description By the clock of the device, RFC 3339. */
            at: string;
            consent: string[];
            name: string;
            old: components["schemas"]["OldJson"][];
        };
        /** @description A price per dent up to a size. */
        SizeClass: {
            /** @description Price of one dent. */
            price: string;
            /**
             * Format: double
             * @description Diameter of its gauge circle, mm; none for all larger ones.
             */
            up_to_mm?: number | null;
        };
        /** @description So many dents of a size. */
        SizeCount: {
            /**
             * Format: int64
             * @description How many.
             */
            dents: number;
            /**
             * Format: double
             * @description Diameter of the circle that they lie in, mm; none where the size is open at the top.
             */
            up_to_mm?: number | null;
        };
        /**
         * @description How dents get their size.
         * @enum {string}
         */
        SizeRule: "gauge" | "majority";
        /** @description What the quote comes to by each rule. */
        SizeRules: {
            /** @description The one that the quote goes by. */
            chosen: components["schemas"]["SizeRule"];
            /** @description Gross with each dent at its own size; none where the table ends before. */
            gauge?: string | null;
            /** @description Gross with every panel at the size of its majority; none where the table ends before. */
            majority?: string | null;
            /** @description Panel by panel. */
            panels: components["schemas"]["PanelSizes"][];
        };
        /**
         * @description Where a dent comes from.
         * @enum {string}
         */
        SourceJson: "hand" | "reading";
        /** @description How net is shared. */
        Split: {
            /** @description Of which lines. */
            on: components["schemas"]["UpliftOn"];
            /** @description The technician's part, %, 0 to 100. */
            technician_percent: string;
        };
        /** @description One low or high. */
        Spot: {
            /**
             * Format: double
             * @description Long axis from panel x toward y, degrees, -90 to 90.
             */
            angle_deg: number;
            /**
             * Format: double
             * @description Area that stands out, mm².
             */
            area_mm2: number;
            /**
             * Format: double
             * @description Where part of it was too steep to read: it goes at least this far, mm, negative for a low.
             */
            at_least_mm?: number | null;
            /** @description The holes in it that were too steep to read, by their place in the reading's list of them. */
            folds?: number[];
            /**
             * Format: double
             * @description Deviation at the extreme, mm; negative for a low.
             */
            height_mm: number;
            /** @description Low or high. */
            kind: components["schemas"]["SpotKind"];
            /**
             * Format: double
             * @description Long axis of the ellipse with the area's second moments, mm.
             */
            length_mm: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm.
             */
            sigma_mm: number;
            /**
             * Format: double
             * @description Volume between it and the intended shape, mm³, positive.
             */
            volume_mm3: number;
            /**
             * Format: double
             * @description Short axis, mm.
             */
            width_mm: number;
            /**
             * Format: double
             * @description Place of the extreme, panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Place of the extreme, panel y, mm.
             */
            y_mm: number;
        };
        /** @description A spot and where it lies in the panel photo. */
        SpotFacts: components["schemas"]["Spot"] & {
            /** @description Its extreme in the photo, px. */
            at_px: [
                number,
                number
            ];
            finish?: components["schemas"]["SpotFinish"] | null;
            /** @description Its outline in the photo, px. */
            outline_px: [
                number,
                number
            ][];
        };
        /** @description The verdict on one spot. */
        SpotFinish: {
            /**
             * Format: double
             * @description Chance that it is over the limit.
             */
            over: number;
            settle?: components["schemas"]["Settle"] | null;
            /**
             * Format: double
             * @description Steepest place of it at the limit's scale, mm per mm.
             */
            slope: number;
            /**
             * Format: double
             * @description One-sigma doubt of that slope.
             */
            slope_sigma: number;
            /** @description The answer. */
            verdict: components["schemas"]["Verdict"];
        };
        /**
         * @description Below or above the intended shape.
         * @enum {string}
         */
        SpotKind: "low" | "high";
        /**
         * @description How several percentages meet.
         * @enum {string}
         */
        Stacking: "add" | "compound";
        /**
         * @description A stage of a job. A job may go back: a customer may withdraw, a car may return.
         * @enum {string}
         */
        Stage: "taken_in" | "quoted" | "authorised" | "in_work" | "finished" | "handed_over";
        /** @description A stage of a read. */
        StageJson: {
            /**
             * Format: double
             * @description Share done, 0 to 1.
             */
            done: number;
            name: string;
        };
        /** @description Camera and board in the panel frame, mm and unit vectors. */
        StandFacts: {
            /** @description Into the photo. */
            ahead: number[];
            /** @description Middle of the board's lit area. */
            board_mm: number[];
            /** @description Lit width and height. */
            board_size_mm: number[];
            /** @description To the board's right. */
            board_u: number[];
            /** @description Up on the board. */
            board_v: number[];
            /** @description Down in the photo. */
            down: number[];
            /** @description The reading camera's centre. */
            eye_mm: number[];
            /** @description To the right in the photo. */
            right: number[];
        };
        /** @description A clock that was started. */
        StartedJson: {
            entry: components["schemas"]["TimeJson"];
            /**
             * Format: uuid
             * @description The entry that ran until then and was stopped by it.
             */
            stopped: string | null;
        };
        /**
         * @description How far a task has come.
         * @enum {string}
         */
        StateJson: "queued" | "running" | "done" | "failed" | "cancelled";
        /** @description One place along a body line. */
        Station: {
            /**
             * Format: double
             * @description Place along the line, mm.
             */
            along_mm: number;
            /**
             * Format: double
             * @description Height of the line over where it should be, mm.
             */
            height_mm: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm.
             */
            height_sigma_mm: number;
            /**
             * Format: double
             * @description Sharpness over that of the rest of the line.
             */
            sharpness: number;
            /**
             * Format: double
             * @description Its one-sigma doubt.
             */
            sharpness_sigma: number;
            /**
             * Format: double
             * @description How far it lies sideways, along the normal, mm.
             */
            sideways_mm: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm.
             */
            sideways_sigma_mm: number;
            /**
             * Format: double
             * @description Panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Panel y, mm.
             */
            y_mm: number;
        };
        /** @description When a clock is stopped. */
        StopTime: {
            /**
             * Format: date-time
             * @description As a device without network noted it; left out for now.
             */
            at?: string | null;
        };
        /** @description Something small with an amount. */
        Sundry: {
            /** @description Its amount. */
            amount: string;
            /** @description Its name. */
            what: string;
        };
        /** @description A tag as its modules: rows from the top, 1 for white. */
        TagModules: {
            id: number;
            rows: string[];
        };
        /** @description A capture that was taken and whose read is queued. */
        Taken: {
            /** Format: uuid */
            capture_id: string;
            /** Format: uuid */
            task_id: string;
        };
        /** @description What was recorded when the car was taken in. */
        TakenInJson: {
            /** @description Each panel that was read, beside the car's others. */
            judged: components["schemas"]["PanelPaint"][];
            old: components["schemas"]["OldJson"][];
            paint: components["schemas"]["PaintReading"][];
            photos: components["schemas"]["CarPhotoJson"][];
            signed: components["schemas"]["SignedJson"] | null;
        };
        /** @description A reading that was taken over. */
        TakenOver: {
            /** Format: uuid */
            reading_id: string;
        };
        /** @description Dents counted, or taken back. */
        TapJson: {
            /**
             * Format: int32
             * @description How many; below zero where they are taken back.
             */
            by: number;
            /**
             * Format: uuid
             * @description The damage; made where it is not there yet.
             */
            damage: string;
            /** @description What was counted; its count is not looked at. */
            dent: components["schemas"]["Dent"];
            /**
             * Format: uuid
             * @description Made on the device; what comes again under it counts once.
             */
            id: string;
            panel: components["schemas"]["Panel"];
        };
        /** @description Taps in the order in which they were made. */
        TapsJson: {
            taps: components["schemas"]["TapJson"][];
        };
        /** @description Why a read has failed. */
        TaskErrorJson: {
            code: string;
            message: string;
            next: string;
        };
        /** @description A read that waits, runs or has ended. */
        TaskJson: {
            error: components["schemas"]["TaskErrorJson"] | null;
            /**
             * Format: double
             * @description Share done, 0 to 1.
             */
            fraction: number;
            /** Format: uuid */
            id: string;
            /**
             * Format: uuid
             * @description What it has given.
             */
            reading_id: string | null;
            /** @description Name of the stage it is in. */
            stage: string;
            /** @description Every stage in order. */
            stages: components["schemas"]["StageJson"][];
            state: components["schemas"]["StateJson"];
        };
        /**
         * @description Where tax is rounded to the smallest coin; the country's law says.
         * @enum {string}
         */
        TaxRounding: "invoice" | "line";
        /** @description What one rate comes to. */
        TaxSum: {
            /** @description What it is taken on. */
            on: string;
            /** @description The rate, %. */
            percent: string;
            /** @description The tax. */
            tax: string;
        };
        /** @description Someone who works in the shop. */
        Technician: {
            /** @description Whether they no longer work here. */
            gone: boolean;
            /**
             * Format: uuid
             * @description Their id.
             */
            id: string;
            /** @description Their name; empty for the one who works alone. */
            name: string;
            /** @description How they are paid. */
            pay: components["schemas"]["Pay"];
        };
        /** @description Somebody who is taken in or changed. */
        TechnicianInput: {
            /**
             * @description Whether they no longer work here; their entries stay.
             * @default false
             */
            gone: boolean;
            /** @default  */
            name: string;
            /**
             * @default {
             *       "by": "none"
             *     }
             */
            pay: components["schemas"]["Pay"];
        };
        /**
         * @description Unit of temperature.
         * @enum {string}
         */
        TemperatureUnit: "c" | "f";
        /** @description Texture of a panel: figures and bands on its sound metal, and places that do not match. */
        TextureFacts: {
            areal?: components["schemas"]["Areal"] | null;
            /** @description What lies in each of the trade's bands, on sound metal. */
            bands: components["schemas"]["Band"][];
            /**
             * Format: double
             * @description Waves up to this length are counted in the figures, mm.
             */
            longest_mm: number;
            /** @description Places whose texture does not match the panel's, the largest first. */
            marks: components["schemas"]["Mark"][];
        };
        /** @description Something no bar may come near. */
        ThingBehind: {
            /** @description One corner, mm. */
            from: number[];
            /**
             * Format: double
             * @description Distance to keep, mm.
             */
            keep: number;
            /** @description What it is. */
            kind: components["schemas"]["BehindKind"];
            /** @description The other. */
            to: number[];
        };
        /** @description What is set right; a field that is left out stays as it is. */
        TimeChange: {
            /** @description Whether it is right as it stands. */
            confirmed?: boolean | null;
            kind?: components["schemas"]["WorkKind"] | null;
            /** Format: date-time */
            started?: string | null;
            /**
             * Format: date-time
             * @description `null` lets it run again.
             */
            stopped?: string | null;
            /** Format: uuid */
            technician?: string | null;
        };
        /** @description A stretch of work. */
        TimeJson: {
            /** @description Whether a person says that it is right as it stands. */
            confirmed: boolean;
            /** Format: uuid */
            id: string;
            kind: components["schemas"]["WorkKind"];
            /**
             * Format: int64
             * @description From start to stop or until now, s; below zero where a clock was set back.
             */
            seconds: number;
            /** Format: date-time */
            started: string;
            state: components["schemas"]["EntryState"];
            /**
             * Format: date-time
             * @description None while it runs; before the start where a clock was set back.
             */
            stopped: string | null;
            /** Format: uuid */
            technician: string;
        };
        /** @description Worked time of a job. */
        TimesAnswer: {
            /** @description What counts, by kind. */
            by_kind: components["schemas"]["WorkedByKind"][];
            /** @description In the order of their start. */
            entries: components["schemas"]["TimeJson"][];
            /** @description Entries in doubt, which count nowhere until they are set right. */
            in_doubt: number;
            /**
             * Format: date-time
             * @description The server's time, by which running clocks are shown.
             */
            now: string;
            /**
             * Format: int64
             * @description What counts on dents, without trim, s: what the hours may learn from.
             */
            on_dents_s: number;
            /** @description The whole shop's time by kind. */
            shop_by_kind: components["schemas"]["WorkedByKind"][];
        };
        /** @description Shape of a tip, tab or knock-down head. */
        Tip: {
            /**
             * Format: double
             * @description Radius, mm.
             */
            radius_mm: number;
            /** @enum {string} */
            shape: "sphere";
        } | {
            /**
             * Format: double
             * @description Radius, mm.
             */
            radius_mm: number;
            /** @enum {string} */
            shape: "disc";
        } | {
            /**
             * Format: double
             * @description Along y, mm.
             */
            height_mm: number;
            /** @enum {string} */
            shape: "rectangle";
            /**
             * Format: double
             * @description Along x, mm.
             */
            width_mm: number;
        } | {
            /**
             * Format: double
             * @description Turn of the long side from x, degrees.
             */
            angle_deg?: number;
            /**
             * Format: double
             * @description Long side, mm.
             */
            length_mm: number;
            /** @enum {string} */
            shape: "strip";
            /**
             * Format: double
             * @description Short side, mm.
             */
            width_mm: number;
        } | {
            /** @enum {string} */
            shape: "point";
        };
        /** @description What is told of a tip. */
        TipFile: {
            aim?: components["schemas"]["AimFacts"] | null;
            /** @description The same place in the photo before, px. */
            at_px?: number[] | null;
            /**
             * Format: double
             * @description How far the camera moved between the photos, px; undone.
             */
            camera_moved_px: number;
            /** @description In which frame places are told. */
            frame: components["schemas"]["TipFrame"];
            /**
             * Format: double
             * @description One-sigma doubt in the direction where it is largest, mm.
             */
            largest_sigma_mm: number;
            /**
             * Format: double
             * @description How far the lines moved beside the tip, in their spacing.
             */
            lines_moved: number;
            /**
             * Format: double
             * @description One-sigma of that.
             */
            lines_moved_sigma: number;
            /** @description Names of the two photos. */
            photos: string[];
            /** @description Where the tip stands, mm. */
            place_mm: number[];
            /** @description One-sigma doubt along x and y, mm. */
            sigma_mm: number[];
            /** @description Tags that tell the frame. */
            tags: components["schemas"]["TipTag"][];
            /** @description Version of the program. */
            version: string;
            /**
             * Format: double
             * @description From the tip to where the lines moved most, mm.
             */
            width_mm: number;
        };
        /**
         * @description The frame of a tip's place.
         * @enum {string}
         */
        TipFrame: "reading" | "tags";
        /** @description A tag of the panel, by its centre. */
        TipTag: {
            id: number;
            /** Format: double */
            x_mm: number;
            /** Format: double */
            y_mm: number;
        };
        /** @description What is signed at the car. */
        ToSign: {
            /** @description The words that were shown. */
            consent: string[];
            /**
             * Format: uuid
             * @description Made on the device; what comes again under it is the same.
             */
            id: string;
            /** @description The old damage that was shown. */
            old: components["schemas"]["OldJson"][];
            signature: components["schemas"]["Signature"];
        };
        /** @description A bar, hook or blade. Its frame: the tip's middle is the origin, it pushes along +z, and the bar is drawn in x and z. */
        Tool: {
            /**
             * Format: double
             * @description Young's modulus, MPa.
             */
            e_mpa: number;
            /** @description Corners of the bar's middle line `[x, z]` from the tip to the hand's end, mm. */
            line: number[][];
            /** @description Name by which it is asked for. */
            name: string;
            /** @description What a technician calls it. */
            says: string;
            /** @description Section; a blade lies flat: its width is across the drawing. */
            section: components["schemas"]["BarSection"];
            /** @description Source, or "common practice". */
            source: string;
            /**
             * Format: double
             * @description Yield stress, MPa.
             */
            yield_mpa: number;
        };
        /** @description A tip, tab or knock-down head. */
        ToolTip: {
            /** @description How hard. */
            hardness: components["schemas"]["Hardness"];
            /** @description Name by which it is asked for. */
            name: string;
            /**
             * Format: double
             * @description Radius of what touches, mm.
             */
            radius: number;
            /** @description Source, or "common practice". */
            source: string;
        };
        /** @description What a move is made with. */
        Tooling: {
            /** @description What it is worked over. */
            fulcrum: components["schemas"]["Fulcrum"];
            /**
             * Format: double
             * @description Force of the tip that it gives, N.
             */
            gives_n: number;
            /**
             * Format: double
             * @description How far its tip goes on, mm.
             */
            goes_on_mm: number;
            /**
             * Format: double
             * @description Length of bar behind the wall, mm.
             */
            inside_mm: number;
            /**
             * Format: double
             * @description Angle between its push and the panel's normal, degrees.
             */
            off_square_deg: number;
            /** @description Wall and opening it goes through. */
            through: string[];
            /** @description Tip on it, by its name in the rack. */
            tip_on_it: string;
            /** @description Tool of the rack. */
            tool: string;
            /** @description Trim that must come off first. */
            trim?: string | null;
            /** @enum {string} */
            with: "bar";
        } | {
            /** @enum {string} */
            with: "not_drawn";
        } | {
            /** @description Glue on file. */
            glue: string;
            /** @description Force it surely and perhaps holds, N. */
            holds_n: number[];
            /** @enum {string} */
            with: "tab";
        } | {
            /** @enum {string} */
            with: "knock_down";
        };
        /** @description What a tip does. */
        Touch: {
            /** @description Push, pull or tap. */
            kind: components["schemas"]["MoveKind"];
            /** @description What touches. */
            tip: components["schemas"]["Tip"];
            /**
             * Format: double
             * @description Travel from first touch, mm.
             */
            travel_mm: number;
            /**
             * Format: double
             * @description Where, x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Where, y, mm.
             */
            y_mm: number;
        };
        /** @description An error: what is wrong, and what to do. */
        Trouble: {
            /** @description Short stable name. */
            code: string;
            /** @description What is wrong with what. */
            message: string;
            /** @description What to do. */
            next: string;
        };
        /**
         * @description What a line's quantity counts.
         * @enum {string}
         */
        Unit: "hour" | "day" | "piece" | "percent";
        /** @description A reason for not reading, its value in the unread map, its share of the grid and what to do. */
        UnreadFacts: {
            code: string;
            /** Format: double */
            fraction: number;
            next: string;
            text: string;
            /** Format: int32 */
            value: number;
        };
        /** @description A percentage on top of some of the lines. */
        Uplift: {
            /** @description On which lines. */
            on: components["schemas"]["UpliftOn"];
            /** @description How much, %; 0 or more. */
            percent: string;
            /** @description Why. */
            what: string;
        };
        /**
         * @description Which lines an uplift is taken on.
         * @enum {string}
         */
        UpliftOn: "dents" | "labour" | "all";
        /**
         * @description The answer.
         * @enum {string}
         */
        Verdict: "done" | "not done" | "cannot tell";
        /** @description What there is to say about a number. It warns and never blocks. */
        VinAnswer: {
            /** @description Whether the check digit fits; none where no rule asks for one. */
            check_digit_ok: boolean | null;
            /** @description Whether it has the form of a VIN. */
            valid: boolean;
            /** @description What is wrong or odd, in words. */
            warning: string | null;
        };
        /** @description A volume with its doubt, mm³. */
        Volume: {
            /**
             * Format: double
             * @description mm³.
             */
            mm3: number;
            /**
             * Format: double
             * @description One-sigma doubt, mm³.
             */
            sigma_mm3: number;
        };
        /** @description A thin flat wall with openings. */
        Wall: {
            /** @description Direction of its first axis. */
            along: number[];
            /** @description What it is. */
            name: string;
            /** @description Its openings. */
            openings: components["schemas"]["Opening"][];
            /** @description Where its own plane begins, mm. */
            origin: number[];
            /** @description Direction toward the one who holds the bar. */
            out: number[];
            /** @description How far it goes, in its plane: along, and `out × along`. */
            outline: components["schemas"]["Outline"];
        };
        /** @description The panel's temperature. */
        WarmJson: {
            /** Format: double */
            temperature_c: number;
        };
        /** @description What comes of it. */
        Warmed: {
            /** @description Radius about the middle, mm, and warmth there, °C, when it has been reached. */
            field: number[][];
            /** @description The limit that applies. */
            limit: components["schemas"]["HeatLimit"];
            /** @description Whether what is wanted is over it. */
            over: boolean;
            reach_s: components["schemas"]["Range"] | null;
            stays_s: components["schemas"]["Range"] | null;
        };
        /**
         * @description What warms.
         * @enum {string}
         */
        Warmer: "hot_air" | "lamp" | "induction";
        /** @description A spot that is to be warmed. */
        WarmingAskedJson: {
            /** @description What lies on the back. */
            backing: components["schemas"]["Backing"];
            /** @description Names of the heat limits that apply beside the paint's. */
            behind: string[];
            /**
             * Format: double
             * @description As it is now, °C.
             */
            from_c: number;
            /**
             * Format: double
             * @description As cold as it may get again, °C.
             */
            keep_c: number;
            /** @description Name of the metal on file. */
            metal: string;
            /** @description Name of the paint on file. */
            paint: string;
            /**
             * Format: double
             * @description Thickness, mm; left out for the metal's likely one.
             */
            thickness_mm?: number | null;
            /**
             * Format: double
             * @description As warm as it shall be, °C.
             */
            to_c: number;
            /** @description With what. */
            with: components["schemas"]["Warmer"];
        };
        /** @description How long the shop stands in for its work. */
        WarrantyTime: {
            /**
             * Format: int32
             * @description Months.
             */
            months: number;
            /** @description Where it comes from. */
            source: string;
        };
        /** @description Brightness `1/2 + 1/2 cos(2π(periods·s + shift))`, in light. */
        Wave: {
            /** @description `u` or `v`. */
            axis: string;
            /** Format: int32 */
            periods: number;
            /** Format: double */
            shift: number;
        };
        /**
         * @description Nearer to the intended shape than before, or farther from it.
         * @enum {string}
         */
        Way: "better" | "worse";
        /**
         * @description How far the coefficients may be off for a shop that has not timed its work: standard deviations, of
         *     the logarithm for factors, of the power itself for powers. Wider learns faster from few jobs.
         */
        Widths: {
            /**
             * Format: double
             * @description Of each access against an open one.
             */
            access: number;
            /**
             * Format: double
             * @description Of `base_hours`: how fast a technician is.
             */
            base: number;
            /**
             * Format: double
             * @description Of `cold_times`.
             */
            cold: number;
            /**
             * Format: double
             * @description Of the power of the count.
             */
            count_power: number;
            /**
             * Format: double
             * @description Of each kind against a round ding.
             */
            kind: number;
            /**
             * Format: double
             * @description Of each metal against steel.
             */
            metal: number;
            /**
             * Format: double
             * @description Of each paint against one in order.
             */
            paint: number;
            /**
             * Format: double
             * @description Of each place against a flat one.
             */
            place: number;
            /**
             * Format: double
             * @description Of the powers of area, depth and sharpness.
             */
            power: number;
            /**
             * Format: double
             * @description As many timed dents as the two spreads are worth; more learns them slower.
             */
            spread_weight: number;
        };
        /** @description The work on a damage. */
        WorkJson: {
            /** @description What is known of the hand: gain, and share of the sheet of a panel nobody touched, each with one sigma. */
            hand: number[][];
            /** @description Day on which it is to be read again. */
            look_again: string | null;
            /** @description Moves, oldest first. */
            moves: components["schemas"]["MoveOfDamageJson"][];
            /** @description Moves it was learned from. */
            tried: number;
        };
        /**
         * @description What was worked.
         * @enum {string}
         */
        WorkKind: "push" | "tap" | "glue" | "trim" | "reading" | "finish";
        /** @description An area that changed. Places in the later reading's frame. */
        Worked: {
            /**
             * Format: double
             * @description Deviation there now, mm.
             */
            after_mm: number;
            /**
             * Format: double
             * @description Area, mm².
             */
            area_mm2: number;
            /**
             * Format: double
             * @description Deviation there before, mm.
             */
            before_mm: number;
            /**
             * Format: double
             * @description Change there, mm; positive is up.
             */
            change_mm: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm.
             */
            sigma_mm: number;
            /**
             * Format: double
             * @description Volume moved in it, up less down, mm³.
             */
            volume_mm3: number;
            /**
             * Format: double
             * @description Its one-sigma doubt, mm³.
             */
            volume_sigma_mm3: number;
            /** @description Nearer to the intended shape, or farther from it. */
            way: components["schemas"]["Way"];
            /**
             * Format: double
             * @description Place of the largest change, panel x, mm.
             */
            x_mm: number;
            /**
             * Format: double
             * @description Place of the largest change, panel y, mm.
             */
            y_mm: number;
        };
        /** @description Worked time by kind. */
        WorkedByKind: {
            /** @description What. */
            kind: components["schemas"]["WorkKind"];
            /**
             * Format: int64
             * @description How long, s.
             */
            seconds: number;
            /**
             * Format: double
             * @description Its share of all that counts, 0 to 1.
             */
            share: number;
        };
        /** @description Worked time of a job: once for the whole job, or damage by damage. */
        WorkedInput: {
            times: components["schemas"]["WorkedTime"][];
        };
        /** @description Worked time on the dents of one damage, or on all. */
        WorkedTime: {
            /**
             * Format: uuid
             * @description The damage; left out for the whole job.
             */
            damage?: string | null;
            /**
             * Format: double
             * @description Worked time on its dents without R&I, s.
             */
            worked_s: number;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    import: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImportedJson"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    archive: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/zip": unknown;
                };
            };
        };
    };
    calendar: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/calendar": unknown;
                };
            };
        };
    };
    cameras: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CameraJson"][];
                };
            };
        };
    };
    calibrate: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CameraJson"];
                };
            };
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_camera: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    read_again: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Queued"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    cautions: {
        parameters: {
            query: {
                job: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CautionRow"][];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    consent: {
        parameters: {
            query: {
                language: components["schemas"]["Language"];
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": string[];
                };
            };
        };
    };
    cooling: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CoolingAskedJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CoolingJson"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    countries: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Country"][];
                };
            };
        };
    };
    crew: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Technician"][];
                };
            };
        };
    };
    add_technician: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TechnicianInput"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Technician"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_technician: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TechnicianInput"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Technician"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_damage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_damage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["DamageChangeJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DamageJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    behind: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BehindJson"] | null;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    draw_behind: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["BehindJson"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    forget_behind: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    send_capture: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Taken"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    add_dent: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Dent"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DentEntryJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    begin_live: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LiveBegin"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LiveOffer"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    look_again: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LookAgainJson"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    send_photos: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": string[];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_photo: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                hash: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    reach: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReachAskedJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReachesJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    take_over_reading: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TakenOver"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    series: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SeriesReadingJson"][];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    work: {
        parameters: {
            query?: {
                technician?: string;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WorkJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_dent: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Dent"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DentEntryJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_dent: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    order_erasure: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ErasureOrder"];
            };
        };
        responses: {
            202: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ErasureOrdered"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    hail_tables: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["HailTableRow"][];
                };
            };
        };
    };
    add_hail_table: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewHailTable"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["HailTableRow"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_hail_table: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    jobs: {
        parameters: {
            query?: {
                /** @description Words, each of which is part of a name, a plate, a car, a VIN, a job number, a place or a note. */
                search?: string;
                /** @description Code of a stage. */
                stage?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobRow"][];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    take_in: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewJobJson"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobJson"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    job: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_job: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_job: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["JobChange"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    add_damage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewDamageJson"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DamageJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    edit_job: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["EditsJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MergedJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    erasure: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ErasurePlan"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    call_off_erasure: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    save_old_damage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OldJson"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_old_damage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                old: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    save_paint: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PaintReading"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_paint: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                read: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    papers: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PaperJson"][];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    issue_paper: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Issue"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PaperJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    send_job_photos: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                shot: components["schemas"]["Shot"];
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_job_photo: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                shot: components["schemas"]["Shot"];
                hash: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    quote: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["QuoteAnswer"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    save_quote: {
        parameters: {
            query?: {
                since?: number;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Pricing"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["QuoteAnswer"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    report: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    sign_at_car: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ToSign"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    taken_in: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TakenInJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    count: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TapsJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JobJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    times: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TimesAnswer"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    add_time: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewTimeJson"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["StartedJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    save_worked: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WorkedInput"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Foretold"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_worked: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    live: {
        parameters: {
            query?: {
                /** @description The version known; the answer waits until there is another. */
                after?: number;
            };
            header?: never;
            path: {
                code: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LiveState"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    end_live: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                code: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    live_again: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                code: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LiveAgain"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LiveState"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    live_board: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                code: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ScreenJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LiveState"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    live_photo: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                code: string;
                turn: number;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "image/jpeg": number[];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LiveState"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    live_shown: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                code: string;
                turn: number;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    metals: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OnFileJson"];
                };
            };
        };
    };
    take_back_move: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    pair: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PairingCode"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    offer: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingOffer"];
                };
            };
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    paper_file: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    pay: {
        parameters: {
            query: {
                from: string;
                until: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PaySheet"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    pay_table: {
        parameters: {
            query: {
                from: string;
                until: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": unknown;
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    photo: {
        parameters: {
            query?: {
                /** @description Width, px. */
                width?: number;
            };
            header?: never;
            path: {
                hash: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    rack: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Rack"];
                };
            };
        };
    };
    save_rack: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Rack"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    starter_rack: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    reading: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReadingJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                earlier: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangeFile"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_file: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                earlier: string;
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/octet-stream": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    export_reading: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                form: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/octet-stream": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    reading_file: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/octet-stream": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    add_gauge: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["GaugeAsked"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReadingJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_gauge: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReadingJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    body_line: {
        parameters: {
            query: {
                from_x_mm: number;
                from_y_mm: number;
                to_x_mm: number;
                to_y_mm: number;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineReport"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    metal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MetalJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    know_metal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MetalAskedJson"];
            };
        };
        responses: {
            202: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    cancel_metal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    metal_map: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/octet-stream": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    try_move: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MoveAsked"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MoveTried"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    note_move: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MadeMoveJson"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    plan: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlanJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    plan_repair: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlanAskedJson"];
            };
        };
        responses: {
            202: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    cancel_plan: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    take: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DentEntryJson"][];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    find_tip: {
        parameters: {
            query?: {
                x_mm?: number;
                y_mm?: number;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["FilesForm"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TipFile"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    rehearsal_levels: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LevelJson"][];
                };
            };
        };
    };
    rehearsals: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RehearsalRow"][];
                };
            };
        };
    };
    begin_rehearsal: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewRehearsalJson"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RehearsalJson"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    rehearsal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RehearsalJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    claim: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClaimsJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimedJson"][];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    end_rehearsal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RehearsalScore"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    foretell_move: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Touch"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangedJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    lean: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LeanJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangedJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    rehearse_move: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Touch"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MadeJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    rehearsal_step: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                step: number;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": number[];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    warm: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WarmJson"];
            };
        };
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    sheet: {
        parameters: {
            query?: {
                /** @description Size of the paper. */
                paper?: "a4" | "letter";
                /** @description Side of a tag's black square, mm; 22 for stickers, 60 for a board's corners. */
                tag_mm?: number;
                /** @description Line board: one black and one white line together, mm. */
                pitch_mm?: number;
                /** @description Line board: sheets side by side. */
                across?: number;
                /** @description Line board: sheets one above the other. */
                down?: number;
            };
            header?: never;
            path: {
                name: "stickers" | "corners" | "lines" | "camera";
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": unknown;
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    shop: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Shop"];
                };
            };
        };
    };
    save_shop: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Shop"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Shop"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    billing: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Billing"];
                };
            };
        };
    };
    save_billing: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["Billing"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Billing"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    hours: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["HoursSettings"];
                };
            };
        };
    };
    save_hours: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["HoursSettings"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["HoursSettings"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    learned: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LearnedAnswer"];
                };
            };
        };
    };
    table: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                name: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": unknown;
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    task: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TaskJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    cancel_task: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    remove_time: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    change_time: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TimeChange"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TimeJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    stop_time: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["StopTime"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TimeJson"];
                };
            };
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
    vin: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                vin: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VinAnswer"];
                };
            };
        };
    };
    warming: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WarmingAskedJson"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Warmed"];
                };
            };
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Trouble"];
                };
            };
        };
    };
}
