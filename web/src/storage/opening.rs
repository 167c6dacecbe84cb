//! Opening the database, of this version of the app, of an older or a newer one.

use js_sys::Reflect;
use wasm_bindgen::prelude::*;
use web_sys::{IdbDatabase, IdbOpenDbRequest};

use super::asked::{factory, opened, other};
use super::database::{Database, DurableDatabase, ENTRIES, NAME, PHOTOS, SUMMARIES, VERSION};
use super::{StoreError, older};

impl Database {
    /// Opens the database, making the object stores at first. One of an older version is copied and
    /// then changed; where that fails, and where it is of a newer version, it is only looked at.
    ///
    /// When another tab wants a newer version this connection closes and calls `outdated`.
    pub(super) async fn open(outdated: impl FnOnce() + 'static) -> Result<Database, StoreError> {
        let looks = match Database::in_this_form(false).await {
            Ok(request) => return Database::of(&request, None, outdated),
            Err(StoreError::Newer) => StoreError::Newer,
            Err(StoreError::Older) => {
                let changed = async {
                    older::copy().await?;
                    Database::in_this_form(true).await
                };
                match changed.await {
                    Ok(request) => return Database::of(&request, None, outdated),
                    Err(_) => StoreError::Older,
                }
            }
            Err(why) => return Err(why),
        };
        let request = factory()?.open(NAME).map_err(other)?;
        opened(&request).await?;
        Database::of(&request, Some(looks), outdated)
    }

    /// Opens the copy of an older version; `None` where there is none.
    pub(super) async fn open_copy() -> Result<Option<Database>, StoreError> {
        let request = factory()?.open(older::COPY).map_err(other)?;
        // Not made where it is not there.
        request.set_onupgradeneeded(leave(&request).dyn_ref());
        match opened(&request).await {
            Ok(()) => Database::of(&request, Some(StoreError::Older), || ()).map(Some),
            Err(StoreError::Lost) => Ok(None),
            Err(why) => Err(why),
        }
    }

    /// Opens the database in the form of this version; with [`StoreError::Older`] left as it is
    /// where that would change it and it may not.
    async fn in_this_form(may_change: bool) -> Result<IdbOpenDbRequest, StoreError> {
        let request = factory()?.open_with_u32(NAME, VERSION).map_err(other)?;
        let made = request.clone();
        let upgrade = Closure::once_into_js(move |event: JsValue| {
            make_stores(&made, &event, may_change);
        });
        request.set_onupgradeneeded(upgrade.dyn_ref());
        match opened(&request).await {
            Err(StoreError::Lost) if noted(&request, OLDER) => Err(StoreError::Older),
            outcome => outcome.map(|()| request),
        }
    }

    fn of(
        request: &IdbOpenDbRequest,
        only_looks: Option<StoreError>,
        outdated: impl FnOnce() + 'static,
    ) -> Result<Database, StoreError> {
        let base: DurableDatabase = request.result().map_err(other)?.unchecked_into();
        let closing = base.clone();
        let changed = Closure::once_into_js(move || {
            closing.unchecked_ref::<IdbDatabase>().close();
            outdated();
        });
        base.set_onversionchange(changed.dyn_ref());
        let (made, replaced) = (noted(request, MADE), noted(request, REPLACED));
        Ok(Database { base, made, replaced, only_looks })
    }
}

/// What is remembered on a request while its database is opened.
const MADE: &str = "made";
const REPLACED: &str = "replaced";
const OLDER: &str = "older";

fn note(request: &IdbOpenDbRequest, what: &str) {
    // A failure to note it costs a notice only.
    Reflect::set(request, &what.into(), &true.into()).ok();
}

fn noted(request: &IdbOpenDbRequest, what: &str) -> bool {
    Reflect::get(request, &what.into()).is_ok_and(|it| it.is_truthy())
}

/// Makes what this version holds and an older one did not; the browser waits for it before the
/// connection opens. What is there stays as it lies. A store that is there already and may not be
/// changed is left.
fn make_stores(request: &IdbOpenDbRequest, event: &JsValue, may_change: bool) {
    let seen = |what: &str| Reflect::get(event, &what.into()).unwrap_or_default();
    if seen("oldVersion").as_f64() == Some(0.0) {
        note(request, MADE);
    } else if !may_change {
        note(request, OLDER);
        return abort(request);
    }
    if seen("dataLoss").as_string().as_deref() == Some("total") {
        note(request, REPLACED);
    }
    let Ok(base) = request.result().map(JsCast::unchecked_into::<IdbDatabase>) else { return };
    let there = base.object_store_names();
    let missing = [ENTRIES, PHOTOS, SUMMARIES].into_iter().filter(|store| !there.contains(store));
    if missing.map(|store| base.create_object_store(store)).any(|made| made.is_err()) {
        // Half a change must not stay.
        abort(request);
    }
}

/// Leaves a database as it is, or not there.
fn leave(request: &IdbOpenDbRequest) -> JsValue {
    let left = request.clone();
    Closure::once_into_js(move || abort(&left))
}

fn abort(request: &IdbOpenDbRequest) {
    if let Some(transaction) = request.transaction() {
        // One that cannot be ended has ended by itself.
        transaction.abort().ok();
    }
}
