//! The contents page of the API.

use crate::app::App;
use crate::{
    archive, assets, behinds, calendar, cameras, captures, cautions, changes, crew, damages, dents, erasure, exports,
    gauges, guard, hail_tables, jobs, learned, lines, live, merges, metal, pair, papers, pay, photos, plans, quote,
    readings, rehearsals, report, sheets, shop, tables, take_in, taps, tasks, times, tips, vin,
};
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::from_fn_with_state;
use tower_http::compression::CompressionLayer;
use tower_http::trace::TraceLayer;
use utoipa::OpenApi;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

/// Uploads count their own bytes; everything else is small.
const MOST_JSON_BYTES: usize = 2 << 20;

/// A photo of a live session, as any phone makes them.
const MOST_SHOT_BYTES: usize = 60 << 20;

#[derive(OpenApi)]
#[openapi(info(title = "Dentwright", description = "Jobs, readings, quotes and papers of a shop."))]
struct Description;

fn api() -> OpenApiRouter<App> {
    let uploads = OpenApiRouter::new()
        .routes(routes!(captures::upload))
        .routes(routes!(tips::find))
        .routes(routes!(photos::upload))
        .routes(routes!(take_in::photos))
        .routes(routes!(exports::take_over))
        .routes(routes!(archive::import))
        .routes(routes!(cameras::list, cameras::add))
        .layer(DefaultBodyLimit::disable());
    let shots = OpenApiRouter::new().routes(routes!(live::photo)).layer(DefaultBodyLimit::max(MOST_SHOT_BYTES));
    OpenApiRouter::with_openapi(Description::openapi())
        .routes(routes!(shop::get, shop::put))
        .routes(routes!(shop::get_hours, shop::put_hours))
        .routes(routes!(jobs::list, jobs::take_in))
        .routes(routes!(jobs::get, jobs::change, jobs::remove))
        .routes(routes!(merges::edit))
        .routes(routes!(taps::count))
        .routes(routes!(take_in::get))
        .routes(routes!(take_in::save_old))
        .routes(routes!(take_in::remove_old))
        .routes(routes!(take_in::save_paint))
        .routes(routes!(take_in::remove_paint))
        .routes(routes!(take_in::remove_photo))
        .routes(routes!(take_in::told))
        .routes(routes!(take_in::sign))
        .routes(routes!(vin::check))
        .routes(routes!(damages::add))
        .routes(routes!(damages::change, damages::remove))
        .routes(routes!(dents::add))
        .routes(routes!(dents::change, dents::remove))
        .routes(routes!(photos::get))
        .routes(routes!(photos::remove))
        .routes(routes!(captures::read_again))
        .routes(routes!(tasks::get, tasks::cancel))
        .routes(routes!(readings::get))
        .routes(routes!(readings::file))
        .routes(routes!(readings::take))
        .routes(routes!(gauges::add, gauges::remove))
        .routes(routes!(changes::get))
        .routes(routes!(changes::file))
        .routes(routes!(changes::of_damage))
        .routes(routes!(exports::get))
        .routes(routes!(lines::get))
        .routes(routes!(metal::on_file))
        .routes(routes!(metal::begin, metal::get, metal::cancel))
        .routes(routes!(metal::map_file))
        .routes(routes!(metal::try_one))
        .routes(routes!(metal::warming))
        .routes(routes!(plans::begin, plans::get, plans::cancel))
        .routes(routes!(plans::note))
        .routes(routes!(plans::take_back))
        .routes(routes!(plans::of_damage))
        .routes(routes!(plans::look_again))
        .routes(routes!(plans::cool))
        .routes(routes!(behinds::get, behinds::draw, behinds::forget))
        .routes(routes!(behinds::reach))
        .routes(routes!(behinds::tools, behinds::save_tools, behinds::forget_tools))
        .routes(routes!(quote::get, quote::put))
        .routes(routes!(hail_tables::list, hail_tables::add))
        .routes(routes!(hail_tables::remove))
        .routes(routes!(learned::get))
        .routes(routes!(learned::put, learned::remove))
        .routes(routes!(report::pdf))
        .routes(routes!(papers::list, papers::add))
        .routes(routes!(papers::file))
        .routes(routes!(papers::packs))
        .routes(routes!(papers::billing, papers::save_billing))
        .routes(routes!(sheets::pdf))
        .routes(routes!(cameras::remove))
        .routes(routes!(cautions::list))
        .routes(routes!(times::list, times::add))
        .routes(routes!(times::change, times::remove))
        .routes(routes!(times::stop))
        .routes(routes!(crew::list, crew::add))
        .routes(routes!(crew::change))
        .routes(routes!(calendar::get))
        .routes(routes!(archive::get))
        .routes(routes!(tables::get))
        .routes(routes!(pay::get))
        .routes(routes!(pay::table))
        .routes(routes!(erasure::plan, erasure::call_off))
        .routes(routes!(erasure::order))
        .routes(routes!(pair::pair))
        .routes(routes!(pair::offer))
        .routes(routes!(rehearsals::level_list))
        .routes(routes!(rehearsals::list, rehearsals::begin))
        .routes(routes!(rehearsals::get))
        .routes(routes!(rehearsals::lean))
        .routes(routes!(rehearsals::foretell))
        .routes(routes!(rehearsals::make))
        .routes(routes!(rehearsals::warm))
        .routes(routes!(rehearsals::claim))
        .routes(routes!(rehearsals::end))
        .routes(routes!(rehearsals::step))
        .routes(routes!(live::begin))
        .routes(routes!(live::state, live::end))
        .routes(routes!(live::lay_out))
        .routes(routes!(live::shown))
        .routes(routes!(live::again))
        .layer(DefaultBodyLimit::max(MOST_JSON_BYTES))
        .merge(uploads)
        .merge(shots)
}

/// The whole server: the API under `/api`, the web app under everything else.
pub fn router(app: App) -> Router {
    let (api, _) = api().split_for_parts();
    api.fallback(assets::asset)
        .layer(from_fn_with_state(app.clone(), guard::guard))
        .layer(CompressionLayer::new())
        .layer(TraceLayer::new_for_http())
        .with_state(app)
}

/// The API's description, OpenAPI 3.1, as JSON.
#[must_use]
pub fn openapi() -> String {
    let (_, description) = api().split_for_parts();
    description.to_pretty_json().unwrap_or_default()
}
