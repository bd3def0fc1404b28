// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** What stands above a lesson: its title and its one idea, the cautions, which never go, and what can be done with the whole. */
final class LessonHead {
    /** What the buttons do. */
    interface Actions {
        /** Shows the lesson before a room. */
        void present();

        /** Writes a sheet into the project's folder of sheets. */
        void sheetIntoProject(LessonSheet.Kind kind);

        /** Writes a sheet into a file that the user names. */
        void sheetIntoFile(LessonSheet.Kind kind);

        /** Returns whether there is a project to write into. */
        boolean projectOpen();
    }

    private final Composite area;
    private final Label title;
    private final Label idea;
    private final MessageLine caution;
    private final Button present;
    private final Button sheet;
    private final Actions actions;

    LessonHead(Composite parent, Font titleFont, Actions actions) {
        this.actions = actions;
        area = new Composite(parent, SWT.NONE);
        Spacing.group(3).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(area);
        title = Ids.name(new Label(area, SWT.WRAP), "lesson.title");
        title.setFont(titleFont);
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .applyTo(title);
        present = button("lesson.present", "head.present", this.actions::present);
        sheet = button("lesson.sheet", "head.sheet", this::showMenu);
        idea = Ids.name(new Label(area, SWT.WRAP), "lesson.idea");
        GridDataFactory.fillDefaults()
                .span(3, 1)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .applyTo(idea);
        caution = new MessageLine(area, "lesson.caution");
        GridDataFactory.fillDefaults()
                .span(3, 1)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .applyTo(caution);
    }

    private Button button(String id, String key, Runnable pressed) {
        Button button = Ids.name(new Button(area, SWT.PUSH), id);
        button.setText(Texts.say(key));
        button.setToolTipText(Texts.say(key + ".hint"));
        button.setEnabled(false);
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }

    Composite control() {
        return area;
    }

    /** Opens the menu of sheets below its button. */
    private void showMenu() {
        Menu menu = new Menu(sheet);
        for (LessonSheet.Kind kind : LessonSheet.Kind.values()) {
            String name = kind == LessonSheet.Kind.EXERCISE ? "exercise" : "solution";
            item(menu, "sheet." + name + ".project", kind, actions::sheetIntoProject)
                    .setEnabled(actions.projectOpen());
            item(menu, "sheet." + name + ".file", kind, actions::sheetIntoFile);
        }
        menu.addListener(SWT.Hide, event -> sheet.getDisplay().asyncExec(menu::dispose));
        Point below = sheet.toDisplay(0, sheet.getSize().y);
        menu.setLocation(below);
        menu.setVisible(true);
    }

    private static MenuItem item(Menu menu, String key, LessonSheet.Kind kind, Consumer<LessonSheet.Kind> action) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(Texts.say(key));
        item.addListener(SWT.Selection, event -> action.accept(kind));
        return item;
    }

    /** Shows the words of a lesson that stay as they are. */
    void begin(LessonRun run) {
        present.setEnabled(true);
        sheet.setEnabled(true);
        title.setText(Texts.plain(run.lesson().title()));
        idea.setText(Texts.plain(run.lesson().idea()));
        show(run);
        area.requestLayout();
    }

    /** Shows the cautions that hold now. */
    void show(LessonRun run) {
        caution.show(Severity.WARNING, Texts.plain(String.join(" ", AnswerWords.cautions(run))));
    }
}
