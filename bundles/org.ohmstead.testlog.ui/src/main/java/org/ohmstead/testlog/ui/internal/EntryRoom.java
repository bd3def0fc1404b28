// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.ProjectSession;

/** Beside the table: everything about the chosen entry in words, and the uncertainty budget of a reading with its bars. */
final class EntryRoom {
    private static final Messages TEXTS = Messages.of(EntryRoom.class);
    private final BackgroundWork work;
    private final CTabFolder tabs;
    private final DetailsPane details;
    private final CTabItem budgetTab;
    private Optional<BudgetPane> budget = Optional.empty();
    private Optional<LogEntry> shown = Optional.empty();

    EntryRoom(Composite parent, BackgroundWork work) {
        this.work = work;
        tabs = Ids.name(new CTabFolder(parent, SWT.TOP | SWT.FLAT), "log.tabs");
        details = new DetailsPane(tabs);
        CTabItem detailsTab = new CTabItem(tabs, SWT.NONE);
        detailsTab.setText(TEXTS.text("tab.details"));
        detailsTab.setControl(details.control());
        budgetTab = new CTabItem(tabs, SWT.NONE);
        budgetTab.setText(TEXTS.text("tab.uncertainty"));
        budgetTab.setToolTipText(TEXTS.text("tab.uncertainty.hint"));
        tabs.setSelection(detailsTab);
        tabs.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> showBudget()));
    }

    /** Shows an entry, or says what to do when none is chosen. */
    void show(Optional<LogEntry> entry, Optional<ProjectSession> session, boolean hidden) {
        shown = session.isPresent() ? entry : Optional.empty();
        showBudget();
        if (shown.isEmpty()) {
            details.showHint(TEXTS.text("details.select"));
            return;
        }
        Project project = session.get().project();
        String revision = session.get().revisionSha256();
        Supplier<Details> written = () -> EntryDetails.of(entry.get(), project, revision);
        Details now = written.get();
        details.show(hidden ? now.under(TEXTS.text("details.hidden")) : now, () -> Numbers.withPoint(written)
                .plainText());
    }

    /** The budget is worked out only while it is looked at. */
    private void showBudget() {
        if (tabs.getSelection() != budgetTab) {
            return;
        }
        if (budget.isEmpty()) {
            BudgetPane pane = new BudgetPane(tabs, work);
            budgetTab.setControl(pane);
            budget = Optional.of(pane);
        }
        budget.get().show(shown);
    }

    /** Writes numbers as they are shown now. */
    void showDisplay() {
        budget.ifPresent(BudgetPane::showTexts);
    }
}
