// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.ohmstead.app.internal.welcome.Pictures;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.BackgroundWork;

/** The help: contents, page, search over all pages, back and forward. The pages are read in the background. */
public final class HelpComposite extends Composite {
    private static final Messages TEXTS = Messages.of(HelpComposite.class);
    private static final int NARROW = 560;
    private static final int SEARCH_WIDTH = 180;
    private static final String FOUND = "search:";

    private final HelpTrail trail = new HelpTrail();
    private final SashForm sash;
    private final HelpContents contents;
    private final HelpPageView page;
    private Text search;
    private ToolItem back;
    private ToolItem forward;
    private Optional<HelpLibrary> library = Optional.empty();
    private Runnable whenRead;

    /**
     * Makes the help and starts to read it.
     *
     * @param parent where it stands
     * @param work what reads the pages
     * @param source where they come from
     */
    public HelpComposite(Composite parent, BackgroundWork work, HelpSource source) {
        super(parent, SWT.NONE);
        Spacing.group(1).spacing(0, 0).applyTo(this);
        createBar();
        sash = new SashForm(this, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        contents = new HelpContents(sash, this::showTopic);
        page = new HelpPageView(sash, this::showTopic);
        sash.setWeights(28, 72);
        sash.addListener(SWT.Resize, event -> turn());
        addKeys(this::key);
        whenRead = this::showFirst;
        tell(TEXTS.text("help.reading"));
        work.start(TEXTS.text("help.reading.job"), progress -> HelpLibrary.read(source), this::read, failure -> {
            if (!isDisposed()) {
                tell(TEXTS.text("help.unreadable", failure.getMessage()));
            }
        });
    }

    /** Shows a page by its address; an address on the web is given to the system's browser. */
    public void showTopic(String href) {
        if (href.startsWith("https:") || href.startsWith("http:")) {
            Program.launch(href);
            return;
        }
        afterReading(() -> library.orElseThrow()
                .page(href)
                .ifPresentOrElse(
                        found ->
                                visit(new HelpTrail.Stop(found, search.getText().strip(), false)),
                        () -> visit(new HelpTrail.Stop(
                                told(href, TEXTS.text("page.unknown"), TEXTS.text("page.unknown.what", href)),
                                "",
                                false))));
    }

    /** Shows what belongs to the place the user is at: some text, and pages that say more. */
    public void showContext(String title, String text, List<HelpTopic> related) {
        List<HelpBlock> blocks = new ArrayList<>();
        blocks.add(HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain(title)));
        blocks.add(HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(text)));
        if (!related.isEmpty()) {
            blocks.add(HelpBlock.Text.of(HelpBlock.Kind.SUBHEADING, HelpSpan.plain(TEXTS.text("help.more"))));
        }
        for (HelpTopic topic : related) {
            blocks.add(new HelpBlock.Text(
                    HelpBlock.Kind.ITEM, 1, "•", List.of(HelpSpan.link(topic.title(), topic.href()))));
        }
        afterReading(() -> visit(new HelpTrail.Stop(new HelpPage("", title, blocks), "", false)));
    }

    /** Shows the first page of the contents. */
    public void showContents() {
        afterReading(this::showFirst);
    }

    /** Searches all pages and lists what was found; an empty query goes back to the contents. */
    public void search(String query) {
        afterReading(() -> {
            if (!search.getText().equals(query)) {
                search.setText(query);
            } else {
                listFinds();
            }
        });
    }

    /** Puts the cursor into the search field. */
    public void focusSearch() {
        search.setFocus();
        search.selectAll();
    }

    @Override
    public boolean setFocus() {
        return page.control().setFocus();
    }

    /** Returns the title of the page that is shown. */
    public String shownTitle() {
        return trail.current().map(stop -> stop.page().title()).orElse("");
    }

    private void createBar() {
        Composite bar = new Composite(this, SWT.NONE);
        Spacing.group(3).margins(Spacing.GAP, Spacing.TIGHT).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        ToolBar ways = new ToolBar(bar, SWT.FLAT);
        back = item(ways, "back", "help.back", TEXTS.text("bar.back"), () -> go(-1));
        forward = item(ways, "forward", "help.forward", TEXTS.text("bar.forward"), () -> go(1));
        search = Ids.name(new Text(bar, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL), "help.search");
        search.setMessage(TEXTS.text("search"));
        search.setToolTipText(TEXTS.text("search.hint"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(SEARCH_WIDTH, SWT.DEFAULT)
                .applyTo(search);
        search.addModifyListener(event -> {
            if (library.isPresent()) {
                listFinds();
            }
        });
        search.addListener(SWT.DefaultSelection, event -> openFirstFind());
        ToolBar sizes = new ToolBar(bar, SWT.FLAT);
        item(sizes, "smaller", "help.smaller", TEXTS.text("bar.smaller"), () -> zoom(-1));
        item(sizes, "larger", "help.larger", TEXTS.text("bar.larger"), () -> zoom(1));
        showWays();
    }

    private static ToolItem item(ToolBar bar, String icon, String id, String tip, Runnable action) {
        ToolItem item = Ids.name(new ToolItem(bar, SWT.PUSH), id);
        item.setImage(Pictures.icon(icon));
        item.setToolTipText(tip);
        item.addListener(SWT.Selection, event -> action.run());
        return item;
    }

    private void zoom(int direction) {
        page.zoom(direction);
    }

    private void addKeys(Listener keys) {
        getDisplay().addFilter(SWT.KeyDown, keys);
        addListener(SWT.Dispose, event -> event.display.removeFilter(SWT.KeyDown, keys));
    }

    private void key(Event event) {
        if (!(event.widget instanceof Control control) || !holds(control)) {
            return;
        }
        boolean ctrl = (event.stateMask & SWT.MODIFIER_MASK & ~SWT.SHIFT) == SWT.MOD1;
        boolean alt = (event.stateMask & SWT.MODIFIER_MASK) == SWT.ALT;
        Runnable action = ctrl ? controlAction(event) : null;
        action = alt ? altAction(event) : action;
        if (action != null) {
            event.doit = false;
            event.type = SWT.None;
            action.run();
        }
    }

    private Runnable controlAction(Event event) {
        return switch (event.keyCode) {
            case '+', '=', SWT.KEYPAD_ADD -> () -> zoom(1);
            case '-', SWT.KEYPAD_SUBTRACT -> () -> zoom(-1);
            case '0', SWT.KEYPAD_0 -> () -> zoom(0);
            case 'f' -> this::focusSearch;
            default -> event.character == '+' ? () -> zoom(1) : null;
        };
    }

    private Runnable altAction(Event event) {
        return switch (event.keyCode) {
            case SWT.ARROW_LEFT -> () -> go(-1);
            case SWT.ARROW_RIGHT -> () -> go(1);
            default -> null;
        };
    }

    private boolean holds(Control control) {
        Control each = control;
        while (each != null && each != this) {
            each = each.getParent();
        }
        return each == this;
    }

    private void turn() {
        int wished = sash.getClientArea().width < NARROW ? SWT.VERTICAL : SWT.HORIZONTAL;
        if (sash.getOrientation() != wished) {
            sash.setOrientation(wished);
        }
    }

    private void read(HelpLibrary newLibrary) {
        if (isDisposed()) {
            return;
        }
        library = Optional.of(newLibrary);
        contents.show(newLibrary);
        whenRead.run();
    }

    private void afterReading(Runnable action) {
        if (library.isPresent()) {
            action.run();
        } else {
            whenRead = action;
        }
    }

    private void showFirst() {
        library.orElseThrow().pages().stream()
                .findFirst()
                .ifPresentOrElse(
                        first -> visit(new HelpTrail.Stop(first, "", false)), () -> tell(TEXTS.text("help.none")));
    }

    private void listFinds() {
        String query = search.getText().strip();
        boolean list = trail.current().filter(HelpTrail.Stop::list).isPresent();
        if (query.isEmpty()) {
            if (list) {
                go(-1);
            }
            return;
        }
        visit(new HelpTrail.Stop(finds(query), query, true));
    }

    private HelpPage finds(String query) {
        List<HelpLibrary.Hit> hits = library.orElseThrow().search(query);
        String title = TEXTS.text("search.found", query);
        List<HelpBlock> blocks = new ArrayList<>();
        blocks.add(HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain(title)));
        if (hits.isEmpty()) {
            blocks.add(HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(TEXTS.text("search.nothing"))));
        }
        for (HelpLibrary.Hit hit : hits) {
            blocks.add(HelpBlock.Text.of(
                    HelpBlock.Kind.SUBHEADING,
                    HelpSpan.link(hit.page().title(), hit.page().href())));
            blocks.add(HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(hit.excerpt())));
        }
        return new HelpPage(FOUND + query, title, blocks);
    }

    private void openFirstFind() {
        library.map(all -> all.search(search.getText())).stream()
                .flatMap(List::stream)
                .findFirst()
                .ifPresent(hit -> {
                    showTopic(hit.page().href());
                    setFocus();
                });
    }

    private void go(int stepCount) {
        trail.go(stepCount).ifPresent(this::display);
    }

    private void visit(HelpTrail.Stop stop) {
        if (trail.current().filter(stop::equals).isEmpty()) {
            trail.add(stop);
        }
        display(stop);
    }

    private void display(HelpTrail.Stop stop) {
        List<Pattern> sought = HelpLibrary.patterns(stop.query());
        page.show(stop.page(), sought);
        contents.mark(stop.page().href());
        showWays();
    }

    private void showWays() {
        back.setEnabled(trail.canGoBack());
        forward.setEnabled(trail.canGoForward());
    }

    private void tell(String sentence) {
        page.show(told("", TEXTS.text("help"), sentence), List.of());
    }

    private static HelpPage told(String href, String title, String sentence) {
        return new HelpPage(
                href,
                title,
                List.of(
                        HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain(title)),
                        HelpBlock.Text.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain(sentence))));
    }
}
