// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The page to begin from: the demo, own projects, the way of the work, and a word on safety. */
public final class WelcomeComposite extends Composite {
    private static final Messages TEXTS = Messages.of(WelcomeComposite.class);
    private static final int WIDEST = 1080;
    private static final int NARROW = 760;
    private static final int MARK_SIZE = 64;
    private static final int STEPS = 4;
    private static final double NAME_SIZE = 2.2;
    private static final double HEADING_SIZE = 1.15;

    private final WelcomeActions actions;
    private final LocalResourceManager resources;
    private final ScrolledComposite scroll;
    private final Composite content;
    private Composite tiles;
    private Composite steps;
    private ActionTile demo;
    private RecentProjects recent;
    private Boolean dark;
    private int fittedWidth;

    /** Makes the page; {@code actions} is what its buttons do. */
    public WelcomeComposite(Composite parent, WelcomeActions actions) {
        super(parent, SWT.NONE);
        this.actions = actions;
        resources = new LocalResourceManager(JFaceResources.getResources(), this);
        setLayout(new FillLayout());
        scroll = Ids.name(new ScrolledComposite(this, SWT.V_SCROLL), "welcome.scroll");
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        scroll.setShowFocusedControl(true);
        Composite page = new Composite(scroll, SWT.NONE);
        Spacing.page(1).margins(2 * Spacing.MARGIN, 2 * Spacing.MARGIN).applyTo(page);
        content = new Composite(page, SWT.NONE);
        Spacing.group(1).spacing(0, 2 * Spacing.MARGIN).applyTo(content);
        GridDataFactory.swtDefaults()
                .align(SWT.CENTER, SWT.BEGINNING)
                .grab(true, true)
                .applyTo(content);
        createHead();
        createTiles();
        createRecent();
        createSteps();
        createCaution();
        scroll.setContent(page);
        scroll.addListener(SWT.Resize, event -> fit());
        page.addListener(SWT.Resize, event -> fit());
        page.addListener(SWT.Paint, event -> toneAgain());
    }

    @Override
    public boolean setFocus() {
        return demo.setFocus();
    }

    /** Lists the recent projects anew. */
    public void refresh() {
        recent.fill();
        fittedWidth = 0;
        fit();
    }

    private void createHead() {
        Composite head = new Composite(content, SWT.NONE);
        Spacing.group(2).spacing(2 * Spacing.MARGIN, 0).applyTo(head);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head);
        Label mark = new Label(head, SWT.NONE);
        mark.setImage(Pictures.mark());
        GridDataFactory.swtDefaults().hint(MARK_SIZE, MARK_SIZE).applyTo(mark);
        Composite names = new Composite(head, SWT.NONE);
        Spacing.tight(1).spacing(0, 0).applyTo(names);
        GridDataFactory.swtDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(names);
        Label name = new Label(names, SWT.NONE);
        name.setText("Ohmstead");
        name.setFont(resources.create(larger(NAME_SIZE)));
        label(names, TEXTS.text("welcome.question"));
    }

    private void createTiles() {
        tiles = new Composite(content, SWT.NONE);
        Spacing.group(3)
                .spacing(Spacing.MARGIN, Spacing.MARGIN)
                .equalWidth(true)
                .applyTo(tiles);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(tiles);
        demo = tile("demo", actions::openDemo);
        tile("project-open", actions::openProject);
        tile("project-new", actions::newProject);
    }

    private ActionTile tile(String icon, Runnable action) {
        boolean primary = tiles.getChildren().length == 0;
        String id = icon.startsWith("project-") ? icon.substring("project-".length()) : icon;
        String text = "tile." + id;
        ActionTile tile = new ActionTile(tiles, icon, TEXTS.text(text), TEXTS.text(text + ".hint"), primary, action);
        Ids.name(tile, "welcome." + id);
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(tile);
        return tile;
    }

    private void createRecent() {
        Composite part = part(TEXTS.text("recent"));
        recent = new RecentProjects(part, actions);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(recent);
    }

    private void createSteps() {
        Composite part = part(TEXTS.text("steps"));
        steps = new Composite(part, SWT.NONE);
        Spacing.group(STEPS)
                .spacing(2 * Spacing.MARGIN, Spacing.MARGIN)
                .equalWidth(true)
                .applyTo(steps);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(steps);
        step("amplifier", "step.describe");
        step("plan", "step.plan");
        step("capture", "step.measure");
        step("sheet", "step.publish");
        Link help = Ids.name(new Link(part, SWT.NONE), "welcome.help");
        help.setText("<a>" + TEXTS.text("steps.guide") + "</a>");
        help.addListener(SWT.Selection, event -> actions.showHelp());
    }

    private void step(String icon, String text) {
        String name = TEXTS.text(text);
        Composite step = new Composite(steps, SWT.NONE);
        Spacing.tight(2).applyTo(step);
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(step);
        Label picture = new Label(step, SWT.NONE);
        picture.setImage(Pictures.icon(icon));
        boolean last = steps.getChildren().length == STEPS;
        Label title = label(step, last ? name : name + "  →");
        title.setFont(resources.create(FontDescriptor.createFrom(getFont()).withStyle(SWT.BOLD)));
        Label words = label(step, TEXTS.text(text + ".hint"));
        GridDataFactory.fillDefaults()
                .span(2, 1)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .applyTo(words);
    }

    private void createCaution() {
        Label line = new Label(content, SWT.SEPARATOR | SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        Composite caution = new Composite(content, SWT.NONE);
        Spacing.group(2).applyTo(caution);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        Label sign = new Label(caution, SWT.NONE);
        sign.setImage(Pictures.icon("warning"));
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(sign);
        Ids.name(label(caution, TEXTS.text("caution")), "welcome.caution");
    }

    private Composite part(String heading) {
        Composite part = new Composite(content, SWT.NONE);
        Spacing.group(1).applyTo(part);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(part);
        label(part, heading).setFont(resources.create(larger(HEADING_SIZE)));
        return part;
    }

    private static Label label(Composite parent, String words) {
        Label label = new Label(parent, SWT.WRAP);
        label.setText(words);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(1, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    private FontDescriptor larger(double factor) {
        int height = getFont().getFontData()[0].getHeight();
        return FontDescriptor.createFrom(getFont())
                .setHeight((int) Math.round(height * factor))
                .withStyle(SWT.BOLD);
    }

    /** Fits the columns to the width; long lines are hard to read, so the page does not grow without end. */
    private void fit() {
        int whole = scroll.getClientArea().width;
        if (whole <= 0 || whole == fittedWidth) {
            return;
        }
        fittedWidth = whole;
        int width = Math.max(1, Math.min(WIDEST, whole - 4 * Spacing.MARGIN));
        boolean narrow = width < NARROW;
        ((GridLayout) tiles.getLayout()).numColumns = narrow ? 1 : 3;
        ((GridLayout) steps.getLayout()).numColumns = narrow ? 2 : STEPS;
        ((GridData) content.getLayoutData()).widthHint = width;
        Control page = scroll.getContent();
        Point size = page.computeSize(whole, SWT.DEFAULT, true);
        scroll.setMinSize(1, size.y);
        content.layout(false, true); // the sizes were just computed
    }

    private void toneAgain() {
        boolean now = Tones.of(content).dark();
        if (dark == null || dark != now) {
            dark = now;
            getDisplay().asyncExec(() -> {
                if (!isDisposed()) {
                    recent.tone();
                }
            });
        }
    }
}
