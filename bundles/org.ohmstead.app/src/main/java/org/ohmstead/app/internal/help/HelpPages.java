// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.ILog;
import org.eclipse.help.HelpSystem;
import org.eclipse.help.IContext;
import org.eclipse.help.IContext2;
import org.eclipse.help.IHelpResource;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.help.AbstractHelpUI;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProjectDesk;

/** What the workbench calls for help: it opens our view, or a window beside a dialog. */
public final class HelpPages extends AbstractHelpUI {
    /** Where {@code IWorkbenchHelpSystem.setHelp} keeps the id of a context. */
    static final String CONTEXT_KEY = PlatformUI.PLUGIN_ID + ".help";

    private static final Messages TEXTS = Messages.of(HelpPages.class);

    private HelpWindow window;

    @Override
    public void displayHelp() {
        help().ifPresent(HelpComposite::showContents);
    }

    /** F1: what belongs to the place where the focus is, else the contents. */
    @Override
    public void displayDynamicHelp() {
        Optional<IContext> place =
                contextId(Display.getCurrent().getFocusControl()).map(HelpSystem::getContext);
        help().ifPresent(help -> place.ifPresentOrElse(context -> show(help, context), help::showContents));
    }

    /** Returns the id that the nearest control around one was given for the help, as the platform keeps it. */
    static Optional<String> contextId(Control focused) {
        for (Control each = focused; each != null; each = each.getParent()) {
            if (each.getData(CONTEXT_KEY) instanceof String id) {
                return Optional.of(id);
            }
        }
        return Optional.empty();
    }

    @Override
    public void displaySearch() {
        help().ifPresent(HelpComposite::focusSearch);
    }

    @Override
    public void search(String expression) {
        help().ifPresent(help -> help.search(expression));
    }

    @Override
    public void displayContext(IContext context, int x, int y) {
        help().ifPresent(help -> show(help, context));
    }

    @Override
    public void displayHelpResource(String href) {
        help().ifPresent(help -> help.showTopic(href));
    }

    @Override
    public boolean isContextHelpDisplayed() {
        return false;
    }

    private static void show(HelpComposite help, IContext context) {
        String title = context instanceof IContext2 titled && titled.getTitle() != null
                ? titled.getTitle()
                : TEXTS.text("help");
        String text = context.getText() == null ? TEXTS.text("help.noText") : context.getText();
        List<HelpTopic> related = new ArrayList<>();
        for (IHelpResource topic : context.getRelatedTopics()) {
            related.add(HelpTopic.page(topic.getLabel(), topic.getHref()));
        }
        help.showContext(title, text, related);
    }

    private Optional<HelpComposite> help() {
        IWorkbenchWindow active = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        Shell front = Display.getCurrent().getActiveShell();
        if (active == null || active.getActivePage() == null) {
            return Optional.empty();
        }
        if (front == null || front == active.getShell()) {
            return view(active.getActivePage());
        }
        if (window == null || !window.serves(front)) {
            ProjectDesk desk = PlatformUI.getWorkbench().getService(ProjectDesk.class);
            window = new HelpWindow(front, desk.work(), new PlatformHelpSource());
        }
        return Optional.of(window.help());
    }

    private static Optional<HelpComposite> view(IWorkbenchPage page) {
        try {
            return Optional.of(((HelpView) page.showView(HelpView.ID)).help());
        } catch (PartInitException e) {
            ILog.of(HelpPages.class).error("The help could not be shown.", e);
            return Optional.empty();
        }
    }
}
