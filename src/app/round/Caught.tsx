import { Component, type ComponentChildren } from 'preact';

interface CaughtProps {
  /** Told of what was thrown while the children were drawn. */
  threw(error: unknown): void;
  children: ComponentChildren;
}

/** Shows its children; nothing in their place once one of them has thrown. */
export class Caught extends Component<CaughtProps> {
  override state = { hasThrown: false };

  override componentDidCatch(error: unknown): void {
    this.setState({ hasThrown: true });
    this.props.threw(error);
  }

  override render() {
    return this.state.hasThrown ? null : this.props.children;
  }
}
